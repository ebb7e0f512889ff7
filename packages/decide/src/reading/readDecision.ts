/** Text to decision: the one way in. Never throws on bad input; all problems are told at once, each with its place. */
import { nearest } from '@loopwright/line/check'
import type { Problem } from '@loopwright/scenario'
import { createReport, type Located, type Report, readSource } from '@loopwright/scenario/text'
import { readAlternatives } from './alternativesReader.ts'
import type { Decision } from './decision.ts'
import { group, optional, type Reading, required, scalar, text } from './fields.ts'
import * as say from './messages.ts'
import { readMoney } from './moneyReader.ts'
import { readScreening } from './screeningReader.ts'

/** What a decision file says, and what is wrong with it. */
export interface DecisionResult {
  /** null if anything is wrong */
  readonly decision: Decision | null
  /** in file order */
  readonly problems: readonly Problem[]
}

const fields = group({
  format: required(scalar, '1'),
  question: optional<string | null>(text, null),
  scenario: required(text, 'the scenario file that the alternatives are made of'),
  today: required(scalar, 'the name of the alternative that stands there today'),
  alternatives: required(readAlternatives, 'at least two ways to build the line, by name'),
  money: optional<Decision['money']>(readMoney, null),
  screening: optional<Decision['screening']>(readScreening, null),
})

/**
 * Reads a decision file: alternatives, money, screening.
 *
 * @param written  YAML 1.2 or JSON; problems carry places in it, and `formatProblems` names the file
 * @example readDecision('format: 1').problems.map(({ path }) => path) // => ['scenario', 'today', 'alternatives']
 */
export function readDecision(written: string): DecisionResult {
  const report = createReport(written)
  const root = readSource(written, report)
  if (root === null) return { decision: null, problems: report.problems() }
  const reading: Reading = { report, currency: '' }
  const found = fields(root, reading)
  const format = root.entries.get('format')?.value
  if (format !== undefined && format.value !== 1) report.add(format, say.formatUnknown(format.source))
  checkToday(root, report)
  if (found === undefined || report.hasErrors()) return { decision: null, problems: report.problems() }
  const { question, scenario, alternatives, money, screening } = found
  const today = alternatives.findIndex(({ name }) => name === found.today)
  const decision = { question, scenario, currency: reading.currency, alternatives, today, money, screening }
  return { decision, problems: report.problems() }
}

/** Today's line must be one of the alternatives, whatever else is wrong with them. */
function checkToday(root: Located, report: Report): void {
  const today = root.entries.get('today')?.value
  const names = [...(root.entries.get('alternatives')?.value.entries.keys() ?? [])]
  const name = today?.kind === 'text' ? String(today.value) : today?.source
  if (today === undefined || name === undefined || names.length === 0 || names.includes(name)) return
  report.add(today, say.notNamed('alternative', name, nearest(name, names), names))
}
