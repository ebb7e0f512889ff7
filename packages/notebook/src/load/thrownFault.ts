/** What a notebook's code has thrown, as a finding about its file. */
import type { Fault } from './fault.ts'
import type { SourcePlace } from './loadNotebook.ts'
import type { StepMark } from './steps.ts'

/** Where in the notebook's own text something was thrown, by who has loaded it. */
export interface Places {
  readonly of: (error: unknown) => SourcePlace | null
  /** a line of a file; '': not known */
  readonly line: (file: string, line: number) => string
}

export interface NotebookPlaces {
  /** the notebook, as its faults shall show it */
  readonly file: string
  readonly places: Places | undefined
}

/** lines after the place in which a word that is meant is looked for */
const NEAR_LINES = 30

/** What was thrown, by the place in the notebook that it comes from; the step itself where nothing is known of it. */
export function thrownFault(error: unknown, mark: Pick<StepMark, 'line' | 'column'>, { file, places }: NotebookPlaces): Fault {
  const found = places?.of(error) ?? null
  const place = found ?? { file, line: mark.line, column: mark.column, source: places?.line(file, mark.line) ?? '' }
  const { fix = '', word = null } = (error instanceof Error ? error : {}) as { readonly fix?: unknown; readonly word?: unknown }
  const message = error instanceof Error ? error.message : String(error)
  const fault = { ...place, length: 1, message, fix: typeof fix === 'string' ? fix : '' }
  return typeof word === 'string' && places !== undefined ? pointedAt(fault, word, places) : fault
}

/** The fault at the word that is meant, where that stands at its place or soon after it. */
function pointedAt(fault: Fault, word: string, places: Places): Fault {
  const found = new RegExp(`(?<![\\w$])${word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![\\w$])`)
  for (let line = fault.line; line < fault.line + NEAR_LINES; line += 1) {
    const source = line === fault.line ? fault.source : places.line(fault.file, line)
    const from = line === fault.line ? fault.column - 1 : 0
    const at = source.slice(from).search(found)
    if (at >= 0) return { ...fault, line, column: from + at + 1, length: word.length, source }
  }
  return fault
}
