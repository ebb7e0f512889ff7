/** Text to decision: the one way in. Never throws on bad input; all problems are told at once, each with its place. */
import { nearest } from '@loopwright/line/check'
import type { Problem } from '@loopwright/scenario'
import { createReport, type Located, readSource } from '@loopwright/scenario/text'
import { readAlternatives } from './alternativesReader.ts'
import type { Decision } from './decision.ts'
import { group, optional, type Reading, required, scalar, text } from './fields.ts'
import * as say from './messages.ts'
import { readCriteria } from './criteriaReader.ts'
import { readAcceptance, readPromise } from './meetingReaders.ts'
import { readMoney } from './moneyReader.ts'
import { readScreening } from './screeningReader.ts'

/** What a decision file says, and what is wrong with it. */
export interface DecisionResult {
  /** null if anything is wrong */
  readonly decision: Decision | null
  /** in file order */
  readonly problems: readonly Problem[]
}

/** Sections that speak of the alternatives are read with their names. */
const fieldsFor = (names: readonly string[], chosen: number) =>
  group({
    format: required(scalar, '1'),
    question: optional<string | null>(text, null),
    scenario: required(text, 'the scenario file that the alternatives are made of'),
    today: required(scalar, 'the name of the alternative that stands there today'),
    alternatives: required(readAlternatives, 'at least two ways to build the line, by name'),
    money: optional<Decision['money']>(readMoney, null),
    screening: optional<Decision['screening']>(readScreening, null),
    criteria: optional<Decision['criteria']>(readCriteria(names), null),
    acceptance: optional<Decision['acceptance']>(readAcceptance(names, chosen), null),
    promise: optional<Decision['promise']>(readPromise(names, chosen), null),
  })

/**
 * Reads a decision file: alternatives, money, screening, criteria, acceptance, promise.
 *
 * @param written  YAML 1.2 or JSON; problems carry places in it, and `formatProblems` names the file
 * @example readDecision('format: 1').problems.map(({ path }) => path) // => ['scenario', 'today', 'alternatives']
 */
export function readDecision(written: string): DecisionResult {
  const report = createReport(written)
  const root = readSource(written, report)
  if (root === null) return { decision: null, problems: report.problems() }
  const stations = root.entries.get('stations')
  if (stations !== undefined && !root.entries.has('alternatives')) {
    report.addAt(stations.keyStart, stations.keyEnd - stations.keyStart, 'stations', say.isScenario())
    return { decision: null, problems: report.problems() }
  }
  const reading: Reading = { report, currency: '' }
  const names = [...(root.entries.get('alternatives')?.value.entries.keys() ?? [])]
  const today = names.indexOf(nameOf(root.entries.get('today')?.value))
  const found = fieldsFor(names, today === 0 ? 1 : 0)(root, reading)
  const format = root.entries.get('format')?.value
  if (format !== undefined && format.value !== 1) report.add(format, say.formatUnknown(format.source))
  if (root.entries.has('today') && names.length > 0 && today < 0) {
    const at = root.entries.get('today')!.value
    report.add(at, say.notNamed('alternative', nameOf(at), nearest(nameOf(at), names), names))
  }
  if (found === undefined || report.hasErrors()) return { decision: null, problems: report.problems() }
  const { question, scenario, alternatives, money, screening, criteria, acceptance, promise } = found
  const decision = { question, scenario, currency: reading.currency, alternatives, today, money, screening, criteria, acceptance, promise }
  return { decision, problems: report.problems() }
}

/** A name as it was written; '' where there is none. */
const nameOf = (at: Located | undefined): string => (at === undefined ? '' : at.kind === 'text' ? String(at.value) : at.source)
