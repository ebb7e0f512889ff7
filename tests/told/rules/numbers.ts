/** Rules about numbers: the text against the document that the same command prints with `--json`. */
import { type Interval, intervalsOf, objectsOf, sharesOf } from '../document.ts'
import type { Judged } from '../rules.ts'
import { numberOf, type Pair, pairsOf, rounds } from '../textParts.ts'

/** A number may stand in the text as it is, as a loss where the document has a gain, or in percent. */
const FACTORS = [1, -1, 100, -100]

export function pairsAreRoundings({ text, json }: Judged): string[] {
  if (json === null) return []
  const intervals = intervalsOf(json)
  return pairsOf(text)
    .filter((pair) => meantBy(pair, intervals).length === 0)
    .map(({ said }) => said)
}

/** Two forms of one interval: "33 ± 7" and "33 ± 6.8". */
export function oneRounding({ text, json }: Judged): string[] {
  const intervals = intervalsOf(json)
  const pairs = pairsOf(text)
  return pairs.flatMap((one, index) =>
    pairs
      .slice(index + 1)
      .filter(
        (other) => (one.meanDecimals !== other.meanDecimals || one.halfDecimals !== other.halfDecimals) && same(one, other, intervals),
      )
      .map((other) => `${one.said} and ${other.said}`),
  )
}

function same(one: Pair, other: Pair, intervals: readonly Interval[]): boolean {
  const meant = meantBy(other, intervals)
  if (intervals.length > 0) return meantBy(one, intervals).some((interval) => meant.includes(interval))
  return (
    rounds(one.mean, other.mean, Math.min(one.meanDecimals, other.meanDecimals)) &&
    rounds(one.half, other.half, Math.min(one.halfDecimals, other.halfDecimals))
  )
}

const meantBy = (pair: Pair, intervals: readonly Interval[]): Interval[] =>
  intervals.filter(({ mean, halfWidth }) =>
    FACTORS.some((factor) => rounds(factor * mean, pair.mean, pair.meanDecimals) && halfRounds(Math.abs(factor) * halfWidth, pair)),
  )

/** A half-width below one unit of its last digit is told as one: "± 0" would promise too much. */
const halfRounds = (halfWidth: number, { half, halfDecimals }: Pair): boolean =>
  rounds(halfWidth, half, halfDecimals) || (halfDecimals >= 0 && halfWidth > 0 && halfWidth < half && half === 10 ** -halfDecimals)

/** "met in 18 of 20 shifts simulated", "none of 100", "all of 20": that many runs there are, and that many met it. */
export function planAgrees({ text, json }: Judged): string[] {
  if (json === null) return []
  const flat = text.replace(/\s+/g, ' ')
  const findings = [...flat.matchAll(/\b(\d+|none|all) of (?:the )?(\d+) (?:\w+ )?(?:simulated|shifts|windows)\b/g)]
    .filter((match) => /plan/.test(flat.slice(Math.max(0, match.index - 160), match.index)))
    .filter(([, met, of]) => !sharesOf(json).some(({ successes, n }) => n === Number(of) && successes === countOf(met!, n)))
    .map(([said]) => said)
  return [...findings, ...singleRun(flat, json)]
}

/** "The plan of 330 was missed by 119 units": of a single run. */
function singleRun(flat: string, json: unknown): string[] {
  const run = objectsOf(json).find(({ document }) => document === 'run')
  const output = run?.output
  const plan = run?.plan
  if (typeof output !== 'number' || typeof plan !== 'number') return []
  const missed = /missed by ([\d.,]+)/.exec(flat)
  if (missed !== null) return numberOf(missed[1]!) === Math.ceil(plan - output) ? [] : [missed[0]]
  return /plan[^.]*\b(?:was|is) met\b/.test(flat) && output < plan ? [`made ${output}, plan ${plan}, and "met"`] : []
}

const countOf = (said: string, n: number): number => (said === 'none' ? 0 : said === 'all' ? n : Number(said))
