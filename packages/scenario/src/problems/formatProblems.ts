/** Findings as text for a terminal, the form that the whole product uses. */
import type { Problem } from './problems.ts'

const WIDTH = 80
const GUTTER = 7
const NO_BREAK = '\u00A0'

/**
 * One block per finding: place, code and path; what was found; the source line with a caret; what would be right. The last line counts.
 * A finding in a change shows the change instead of a line of the file.
 *
 * @param text      the scenario text that the findings are about
 * @param fileName  as it shall be shown
 * @returns         lines without colour, no newline at the end; empty text without findings
 * @example formatProblems(readScenario('format: 2').problems.slice(0, 1), 'format: 2', 'line.yaml').split('\n')[0] // => 'line.yaml:1:1  E_MISSING  question'
 */
export function formatProblems(problems: readonly Problem[], text: string, fileName: string): string {
  if (problems.length === 0) return ''
  const lines = text.split(/\r?\n/)
  return [...problems.map((problem) => block(problem, lines, fileName)), lastLine(problems)].join('\n')
}

function block(problem: Problem, lines: readonly string[], fileName: string): string {
  const change = problem.change?.split('\n')
  const line = (change ?? lines)[problem.line - 1] ?? ''
  const place = change === undefined ? `${fileName}:${problem.line}:${problem.column}` : `${fileName} with a change`
  const head = oneLine(`${place}  ${problem.code}${problem.path === '' ? '' : `  ${problem.path}`}`)
  const number = change === undefined ? String(problem.line) : ''
  const room = WIDTH - GUTTER - 3
  const cut = excerpt(line.replaceAll('\t', ' '), problem.column - 1, problem.length, room)
  const caret = '^'.repeat(Math.max(1, Math.min(problem.length, room - cut.start)))
  return [
    head,
    ...wrap(oneLine(problem.message), '  '),
    `${number.padStart(GUTTER)} | ${cut.text}`,
    `${' '.repeat(GUTTER)} | ${' '.repeat(cut.start)}${caret}`,
    ...wrap(oneLine(problem.fix), '  '),
  ].join('\n')
}

/** A name that holds a line end must not look like a finding of its own. */
const oneLine = (text: string): string => text.replace(/[\r\n\u0085\u2028\u2029]+/g, ' ')

/** The part of a long line around the place, with … where it was cut. */
function excerpt(line: string, start: number, length: number, room: number): { text: string; start: number } {
  if (line.length <= room) return { text: line, start }
  const from = Math.max(0, Math.min(start - Math.floor(Math.max(8, (room - length) / 2)), line.length - room))
  let text = line.slice(from, from + room)
  if (from > 0) text = `…${text.slice(1)}`
  if (from + room < line.length) text = `${text.slice(0, -1)}…`
  return { text, start: start - from }
}

/** Lines of at most 80 columns; a number stays with its unit. */
function wrap(sentence: string, indent: string): string[] {
  const lines: string[] = []
  let line = indent
  const glued = sentence.replace(/(\d) (?=(?:m|s|h|min|mm|%)(?:\W|$))/g, `$1${NO_BREAK}`)
  for (const word of glued.split(' ')) {
    if (line.length > indent.length && line.length + 1 + word.length > WIDTH) {
      lines.push(line)
      line = indent
    }
    line += (line.length > indent.length ? ' ' : '') + word
  }
  return [...lines, line].map((one) => one.replaceAll(NO_BREAK, ' '))
}

function lastLine(problems: readonly Problem[]): string {
  const errors = problems.filter((problem) => problem.severity === 'error').length
  const warnings = problems.length - errors
  const count = (n: number, word: string): string => `${n} ${word}${n === 1 ? '' : 's'}`
  if (errors === 0) return `${count(warnings, 'warning')} found.`
  return `${count(errors, 'problem')}${warnings === 0 ? '' : ` and ${count(warnings, 'warning')}`} found; nothing was run.`
}
