/** What a study tells: made once, and shown in the terminal, on the page, in a notebook and as files of tables. */
import type { Cell } from './cell.ts'

/** A question and its cells, in the order of reading. */
export interface Tale {
  /** the question that the cells answer: heads the page */
  readonly question: string
  /** in the order of reading: answer, warnings, what it rests on, how sure, details, inputs, cautions */
  readonly cells: readonly Cell[]
}

/**
 * Where a study ended before there was anything to tell.
 *
 * @example emptyTale('Nothing to tell.').question // => 'Nothing to tell.'
 */
export function emptyTale(sentence: string): Tale {
  return { question: sentence, cells: [{ kind: 'answer', id: 'answer', sentences: [sentence] }] }
}
