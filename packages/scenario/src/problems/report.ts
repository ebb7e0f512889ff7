/** Collects findings while a file is read, so that all of them can be shown at once, in file order. */

import type { Located } from '../text/located.ts'
import { type Sentence, tooManyFindings } from './messages.ts'
import type { Problem } from './problems.ts'

/** more than anybody reads */
const FINDINGS_MAX = 200

/** Takes findings while a file is read. */
export interface Report {
  /** a finding about a value, or about a stretch inside its text (columns from 0) */
  add(at: Located, sentence: Sentence, start?: number, length?: number): void
  /** a finding at a place of the text */
  addAt(offset: number, length: number, path: string, sentence: Sentence): void
  lineOf(offset: number): number
  hasErrors(): boolean
  /** findings so far */
  count(): number
  /** no more findings are taken; the last one says so */
  isFull(): boolean
  /** by place; each finding once */
  problems(): Problem[]
}

/**
 * A report about one text, empty.
 *
 * @param text  that the findings are about: their lines and columns are counted in it
 * @example createReport('a: 1').hasErrors() // => false
 */
export function createReport(text: string): Report {
  const lineStarts = [0]
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lineStarts.push(at + 1)
  const found: { offset: number; problem: Problem }[] = []
  const lineOf = (offset: number): number => {
    let low = 0
    let high = lineStarts.length - 1
    while (low < high) {
      const middle = (low + high + 1) >> 1
      if (lineStarts[middle]! <= offset) low = middle
      else high = middle - 1
    }
    return low + 1
  }
  function addAt(offset: number, length: number, path: string, given: Sentence): void {
    if (found.length > FINDINGS_MAX) return
    const sentence = found.length === FINDINGS_MAX ? tooManyFindings(FINDINGS_MAX) : given
    const line = lineOf(offset)
    const lineEnd = (lineStarts[line] ?? text.length + 1) - 1
    const column = offset - lineStarts[line - 1]! + 1
    const shown = Math.max(1, Math.min(length, lineEnd - offset))
    found.push({
      offset,
      problem: {
        code: sentence.code,
        severity: sentence.severity,
        path,
        line,
        column,
        length: shown,
        message: sentence.message,
        fix: sentence.fix,
      },
    })
  }
  function add(at: Located, sentence: Sentence, start?: number, length?: number): void {
    if (start !== undefined && at.textStart !== null) addAt(at.textStart + start, length ?? 1, at.path, sentence)
    else if (at.kind !== 'map' && at.kind !== 'list' && at.kind !== 'null') addAt(at.start, at.end - at.start, at.path, sentence)
    else if (at.keyStart !== undefined && at.keyEnd !== undefined) addAt(at.keyStart, at.keyEnd - at.keyStart, at.path, sentence)
    else addAt(at.start, 1, at.path, sentence)
  }
  function problems(): Problem[] {
    const seen = new Set<string>()
    const sorted = found.toSorted((a, b) => a.offset - b.offset).map(({ problem }) => problem)
    return sorted.filter((problem) => {
      const key = `${problem.code} ${problem.line}:${problem.column} ${problem.message}`
      if (seen.has(key)) return false
      seen.add(key)
      return true
    })
  }
  return {
    add,
    addAt,
    lineOf,
    count: () => found.length,
    isFull: () => found.length > FINDINGS_MAX,
    hasErrors: () => found.some(({ problem }) => problem.severity === 'error'),
    problems,
  }
}
