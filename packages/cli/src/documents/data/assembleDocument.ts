/** The document of `loopwright assemble --json`. */
import type { Assembly } from '@loopwright/measure'
import type { Difference } from '@loopwright/scenario'
import type { CompareResult } from '@loopwright/study/compare'
import type { Folder } from '../../dataFolder.ts'
import { accountSchema, fileDocument } from './accountDocument.ts'
import { documentSchema, list, orNull, record, type Schema, text } from '../schemaParts.ts'
import { differenceSchema } from '../compareDocument.ts'
import { formHead, formHeadSchema } from '../form.ts'

interface AssembledRun {
  readonly skeleton: string
  readonly written: string | null
  readonly folder: Folder
  readonly assembly: Assembly
  readonly differences: readonly Difference[] | null
  readonly result: CompareResult | null
}

export function assembleDocument({ skeleton, written, folder, assembly, differences, result }: AssembledRun): object {
  const difference = result?.pairs[0]?.difference ?? null
  return {
    ...formHead('assemble'),
    skeleton,
    written,
    files: folder.files.map(fileDocument),
    unused: folder.unused,
    changes: assembly.changes,
    notes: assembly.notes,
    differences,
    difference,
  }
}

/** JSON Schema of that document. */
export function assembleSchema(): Schema {
  const change = record(
    { path: text('in the scenario'), value: text('as it says it'), from: text('table, and what it rests on') },
    'one value',
  )
  return documentSchema(
    'A scenario of data, by loopwright',
    record(
      {
        ...formHeadSchema('assemble'),
        skeleton: text('file, as given'),
        written: orNull(text('file of the complete scenario; null: none')),
        files: list(accountSchema(), 'tables of the folder'),
        unused: list(text('file'), 'that no reader takes'),
        changes: list(change, 'values that come from data'),
        notes: list(text('a sentence'), 'what is still a guess, or counts twice'),
        differences: orNull(
          list(
            record(
              {
                path: text('in the complete form'),
                places: list(text('name'), 'that * stands for'),
                before: orNull(text('as written last')),
                after: orNull(text('now')),
              },
              'one value',
            ),
            'since it was written last; null: it was not there',
          ),
        ),
        difference: orNull(differenceSchema('units per window, now less before, in the same worlds; null: nothing to compare')),
      },
      'What `loopwright assemble --json` prints.',
    ),
  )
}
