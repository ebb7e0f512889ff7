/** What is wrong with a notebook, and where it stands in its file. */

/** A finding about a notebook. Lines and columns count from 1. */
export interface Fault {
  /** as it shall be shown */
  readonly file: string
  readonly line: number
  readonly column: number
  /** characters that are meant; at least 1 */
  readonly length: number
  /** that line of the file; '' where it is not known */
  readonly source: string
  readonly message: string
  /** what would be right; '' where nobody knows */
  readonly fix: string
}

/** A notebook that cannot be carried out at all: it was not understood. */
export class NotebookFaults extends Error {
  override readonly name = 'NotebookFaults'
  readonly faults: readonly Fault[]
  constructor(faults: readonly Fault[]) {
    super(faults.map(faultText).join('\n\n'))
    this.faults = faults
  }
}

/** A mistake in what a notebook asks for: the message says what was found, `fix` what would be right. `word` is what to point at. */
export class Mistake extends RangeError {
  readonly fix: string
  readonly word: string | null
  constructor(message: string, fix: string, word: string | null = null) {
    super(message)
    this.fix = fix
    this.word = word
  }
}

const GUTTER = 7
/** characters of a line that are shown */
const WIDTH = 100

/**
 * The line, and what is meant in it.
 *
 * @returns  two lines; '' where the line is not known
 */
export function frameText({ line, column, length, source }: Fault): string {
  if (source.trim() === '') return ''
  const cut = column + length > WIDTH ? column - 1 - WIDTH / 2 : 0
  const shown = source.slice(cut, cut + WIDTH).replaceAll('\t', ' ')
  const caret = '^'.repeat(Math.max(1, Math.min(length, WIDTH - (column - 1 - cut))))
  return `${String(line).padStart(GUTTER)} | ${shown}\n${' '.repeat(GUTTER)} | ${' '.repeat(column - 1 - cut)}${caret}`
}

/** Place, what was found, the line with a caret, what would be right; without a line end. */
export function faultText(fault: Fault): string {
  return [
    placeText(fault),
    ...fault.message.split('\n').map((each) => `  ${each}`),
    ...(frameText(fault) === '' ? [] : [frameText(fault)]),
    ...(fault.fix === '' ? [] : [`  ${fault.fix}`]),
  ].join('\n')
}

export const placeText = ({ file, line, column }: Fault): string => `${file}:${line}:${column}`
