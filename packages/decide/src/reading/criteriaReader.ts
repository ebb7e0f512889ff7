/** The section `criteria` of a decision file. */
import { nearest } from '@loopwright/line/check'
import type { Located, Report } from '@loopwright/scenario/text'
import { byName, type Field, group, number, optional, type Reader, refuse, required, word } from './fields.ts'
import * as say from './messages.ts'
import { own } from './quantities.ts'
import { COMPUTED, type ComputedFigure, type CriteriaSection, type CriterionSection } from './decision.ts'

const SCORE = [1, 2, 3, 4, 5]
const figures = Object.fromEntries(COMPUTED.map((name) => [name, name])) as Record<ComputedFigure, ComputedFigure>

/** A figure, or what the anchor says in words. */
const anchor: Reader<number | string> = (at, { report }) => {
  if (at.kind === 'number' && Number.isFinite(at.value)) return at.value as number
  return at.kind === 'text' && at.value !== '' ? String(at.value) : refuse(at, report, 'a number, or what it looks like in words')
}

const score: Reader<number> = (at, { report }) => {
  if (at.kind === 'number' && SCORE.includes(at.value as number)) return at.value as number
  report.add(at, say.scoreOdd(at.source))
  return undefined
}

const each = group({
  weight: required(number(0, 100), 'its weight in per cent, such as 30'),
  from: optional<ComputedFigure | null>(word(figures), null),
  one: required(anchor, 'what scores 1'),
  five: required(anchor, 'what scores 5'),
  scores: optional<ReadonlyMap<string, number> | null>((at, reading) => {
    const found = byName(score, 'a score for each alternative')(at, reading)
    return found === undefined ? undefined : new Map(found.map(([name, value]) => [name, value]))
  }, null),
})

const told: Field<ReadonlyMap<string, boolean> | null> = optional<ReadonlyMap<string, boolean> | null>((at, reading) => {
  const found = byName(word({ yes: true, no: false, true: true, false: false }), '"yes" or "no" for each alternative')(at, reading)
  return found === undefined ? undefined : new Map(found.map(([name, value]) => [name, value]))
}, null)

const must = group({
  planMetIn: optional<number | null>(own('percent', { least: 'zero', most: 1 }), null),
  met: told,
})

/** Those that can be read, with whether their weights sum to 100. */
const withWeights =
  <T extends readonly (readonly [string, { readonly weight: number }, unknown])[]>(read: Reader<T>): Reader<T> =>
  (at, reading) => {
    const found = read(at, reading)
    const sum = (found ?? []).reduce((all, [, { weight }]) => all + weight, 0)
    if (found === undefined || Math.abs(sum - 100) <= 1e-9) return found
    reading.report.add(at, say.weightsOff(sum))
    return undefined
  }

const fields = group({
  mustHaves: optional(byName(must, 'must-haves'), []),
  weigh: required(withWeights(byName(each, 'criteria')), 'criteria by name, with weights that sum to 100'),
})

/** @param names  of the alternatives */
export const readCriteria =
  (names: readonly string[]): Reader<CriteriaSection> =>
  (at, reading) => {
    const found = fields(at, reading)
    if (found === undefined) return undefined
    const { report } = reading
    const before = report.count()
    const criteria = found.weigh.map(([name, one, entry]): CriterionSection => {
      checkCriterion(name, one, entry.value, names, report)
      return { name, weight: one.weight, from: one.from, one: one.one, five: one.five, scores: one.scores }
    })
    const mustHaves = found.mustHaves.map(([name, { planMetIn, met }, entry]) => {
      if ((planMetIn === null) === (met === null))
        report.add(entry.value, say.missing('met', 'an answer for each alternative, or "planMetIn:" with a share'))
      if (met !== null) checkNames(met, entry.value.entries.get('met')!.value, names, report)
      return { name, planMetIn, met }
    })
    return report.count() > before ? undefined : { mustHaves, criteria }
  }

function checkCriterion(
  name: string,
  { from, one, five, scores }: Omit<CriterionSection, 'name' | 'weight'>,
  at: Located,
  names: readonly string[],
  report: Report,
): void {
  if (from === null) {
    if (scores === null) report.add(at, say.missing('scores', 'a score for each alternative'))
    else checkNames(scores, at.entries.get('scores')!.value, names, report)
    return
  }
  if (scores !== null) report.add(at.entries.get('scores')!.value, say.scoreComputed(name, from))
  if (typeof one !== 'number' || typeof five !== 'number')
    report.add(at, say.anchorsOdd(`the anchors of ${name} are words, and its score is computed`))
  else if (one === five) report.add(at, say.anchorsOdd(`both anchors of ${name} are ${one}`))
}

/** An answer for each alternative, and for nobody else. */
function checkNames(given: ReadonlyMap<string, unknown>, at: Located, names: readonly string[], report: Report): void {
  for (const name of given.keys())
    if (!names.includes(name)) report.add(at.entries.get(name)!.value, say.notNamed('alternative', name, nearest(name, names), names))
  for (const name of names) if (!given.has(name)) report.add(at, say.missing(name, 'what holds for this alternative'))
}
