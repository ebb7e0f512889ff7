/** Something that reads what somebody else may have written. */
import type { Whole } from './mutated.ts'

export interface Reader {
  /** null: nothing is wrong with how the text was taken */
  try(text: string): Promise<string | null> | string | null
  /** right texts, from which the spoilt ones are made */
  readonly texts: readonly string[]
  /** how a text is spoilt; null: as any text */
  readonly spoil: ((whole: Whole) => string) | null
  /** of so many numbers one is tried: what takes longer is tried more seldom */
  readonly every: number
}

/** A reader of plain texts: what it finds wrong, or what it throws. */
export const plain = (texts: readonly string[], attempt: Reader['try']): Reader => ({ texts, spoil: null, every: 1, try: attempt })

/** What refuses a text in words. */
const REFUSALS = ['TableError', 'StatisticsError', 'Misuse', 'MoneyError']

/** Takes a text or says in words why not; an error of another kind is a finding. */
export function takenOrRefused(take: () => string | null): string | null {
  try {
    return take()
  } catch (error) {
    if (!(error instanceof Error)) return `thrown is no error: ${String(error)}`
    if (!REFUSALS.includes(error.name)) return `an error is thrown: ${error.stack}`
    return oddFigure(error.message)
  }
}

/** A figure that is none, or a record put into a sentence; what the text itself says stands in quotes. */
export function oddFigure(message: string): string | null {
  const own = message.replaceAll(/"(?:[^"\\]|\\.)*"/g, '""')
  return /\b(?:NaN|Infinity|undefined)\b|\[object/.test(own) ? `a figure that is none: ${message.slice(0, 400)}` : null
}

/** What a command says where it does not know itself what went wrong. */
export const defectIn = (err: string): string | null =>
  /defect of loopwright|^\s+at .*\.[jt]s:\d+/m.test(err) ? `a defect: ${err.slice(0, 600)}` : null
