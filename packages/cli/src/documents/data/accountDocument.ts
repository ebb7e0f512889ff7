/** What became of the rows of a table, in documents. */
import type { Account } from '@loopwright/measure'
import { count, flag, list, record, type Schema, text } from '../schemaParts.ts'
import { formHead, formHeadSchema } from '../form.ts'

interface ReadTable {
  readonly file: string
  readonly account: Account
  readonly said: readonly string[]
  readonly doubts: readonly string[]
}

/** How the document of tables begins. */
export const tablesHead = (document: string, tables: readonly ReadTable[]): object => ({
  ...formHead(document),
  files: tables.map(fileDocument),
})

export const tablesHeadSchema = (document: string): Record<string, Schema> => ({
  ...formHeadSchema(document),
  files: list(accountSchema(), 'in the order given'),
})

/** A table as documents tell it. */
export function fileDocument({ file, account, said, doubts }: ReadTable): object {
  return { file, rows: account.rows, read: account.read, heads: account.heads, refused: account.refusals, said, doubts }
}

export const accountSchema = (): Schema =>
  record(
    {
      file: text('as given'),
      rows: count('rows other than heads; read and refused together'),
      read: count('rows read'),
      heads: count('rows of heads'),
      refused: list(
        record(
          {
            line: count('line or row of the file'),
            place: text('line and column, or cell'),
            reason: text('why'),
            wholeRow: flag('false: a cell alone, the rest of its row was read'),
          },
          'one row or cell',
        ),
        'in the order of the file',
      ),
      said: list(text('a sentence'), 'what was understood'),
      doubts: list(text('a sentence'), 'what was guessed'),
    },
    'one table',
  )
