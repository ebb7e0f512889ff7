/** What limits a line and why, in sentences that hold for the numbers of the run. */
import { gainText } from '@loopwright/charts'
import { capital, formatShare } from '@loopwright/charts/table'
import { listWords, stationWords } from '@loopwright/line'
import type { Diagnosis, Evidence, Named } from '@loopwright/study'
import type { Period } from '../sweep/period.ts'
import { limitClause, limitCount, limitName, limitSentence } from './limitWords.ts'
import { wholeChangeSentence } from './wholeChangeWords.ts'

type Words = Pick<Period, 'one' | 'each'>

/** What is needed of a line to name its parts. */
export interface NamedStations {
  readonly stations: readonly { readonly name: string; readonly title: string }[]
}

/**
 * The first sentence names the limit, and what it allows; one follows for each other piece of evidence; the last says whether they agree, by names.
 *
 * @param said  what the limit allows is told already, by a warning
 */
export function diagnosisSentences(diagnosis: Diagnosis, line: NamedStations, words: Words, said = false): string[] {
  const { limitedBy, evidence } = diagnosis
  if (limitedBy === null) return ['Nothing is shown to limit the line.', ...evidence.map((one) => evidenceSentence(one, line, words))]
  const own = evidence.find((one) => one.source === 'limit' && one.named.kind === limitedBy.kind && one.named.name === limitedBy.name)
  const others = evidence.filter((one) => one !== own).map((one) => evidenceSentence(one, line, words))
  return [
    firstSentence(limitedBy, own?.source === 'limit' ? own : null, words, said),
    ...others,
    ...agreement(diagnosis),
    ...asTightSentence(diagnosis, words),
  ]
}

/** limits that are named beside the one that is tightest */
const AS_TIGHT_MAX = 2

/** "Operator screwer (about 467 units a shift) is within 5 % of that by mean times, which do not tell which of them limits." */
export function asTightSentence({ asTight }: Pick<Diagnosis, 'asTight'>, { each }: Pick<Words, 'each'>): string[] {
  if (asTight.length === 0) return []
  const named = asTight.map((limit) => `${limitName(limit)} (${limitCount(limit)} units ${each})`)
  return [
    `${capital(listWords(named, AS_TIGHT_MAX))} ${asTight.length === 1 ? 'is' : 'are'} within 5 % of that by mean times, which do not tell which of them limits: \`loopwright drivers\` simulates a change of each.`,
  ]
}

function firstSentence(named: Named, own: Extract<Evidence, { source: 'limit' }> | null, words: Words, said: boolean): string {
  const name = limitName(named)
  if (own === null) return `What limits the line: ${name}.`
  const reached = reachedWords(own)
  if (said) return `What limits the line: ${name}${reached === '' ? '' : `, as said above; ${reached}`}.`
  return `What limits the line: ${limitClause(own.limit, words)}${reached === '' ? '' : `; ${reached}`}.`
}

/** "the line makes 97 % of that" */
function reachedWords({ limit, reachedShare }: Extract<Evidence, { source: 'limit' }>): string {
  if (reachedShare === null) return ''
  if (reachedShare < ALL) return `the line makes ${formatShare(reachedShare)} of that`
  return limit.atMost ? 'the line makes all of that' : 'the line makes as much'
}

/** More is told as all: a limit holds in the long run, and a window ends somewhere. */
const ALL = 0.995
/** of the time, less is a wait */
const NEVER = 0.9999

function agreement({ evidence, limitedBy, agrees }: Diagnosis): string[] {
  const named = evidence.filter(({ named: one }) => one !== null)
  if (named.length < 2 || limitedBy === null) return []
  const name = limitName(limitedBy)
  const sources = [...new Set(named.map(({ source }) => SOURCES[source]))]
  if (agrees) return sources.length < 2 ? [] : [`${capital(listWords(sources))} ${sources.length === 2 ? 'both' : 'all'} point at ${name}.`]
  const others = named.filter(({ named: one }) => one!.name !== limitedBy.name || one!.kind !== limitedBy.kind)
  const by = new Map<string, string[]>()
  for (const { source, named: one } of others) by.set(limitName(one!), [...new Set([...(by.get(limitName(one!)) ?? []), SOURCES[source]])])
  const which = [...by].map(
    ([other, from]) => `${listWords(from)} ${from.length === 1 && !SOURCES.limit.startsWith(from[0]!) ? 'points' : 'point'} at ${other}`,
  )
  const trust =
    named[0]!.source === 'driver' || named[0]!.source === 'one more'
      ? 'The change that was simulated is the better guide.'
      : '`loopwright drivers` simulates a change of each.'
  return which.length === 0 ? [] : [`But ${which.join(', and ')}. ${trust}`]
}

const SOURCES: Readonly<Record<Evidence['source'], string>> = {
  limit: 'the mean times',
  states: 'the waiting of the stations',
  'one more': 'what one more brings',
  driver: 'what less time brings',
}

/** One piece of evidence, as a sentence. */
export function evidenceSentence(evidence: Evidence, line: NamedStations, words: Words): string {
  const { one, each } = words
  switch (evidence.source) {
    case 'limit': {
      const reached = reachedWords(evidence)
      return `${limitSentence(evidence.limit, words)}${reached === '' ? '' : `; ${reached}`}.`
    }
    case 'one more':
      return `${capital(wholeChangeSentence(evidence.effect, each))}.`
    case 'driver': {
      const { name, lessIsBetter } = evidence.effect
      return `Of what takes time, 1 % ${lessIsBetter ? 'less' : 'more'} of ${name} brings most: ${gainText(evidence.effect)} more output.`
    }
    case 'states': {
      const { state, share, station } = evidence
      const name = stationWords(line.stations[station]!)
      const alone = line.stations.length === 1
      const busiest = alone ? name : `Even the busiest station, ${name},`
      switch (state) {
        case 'busy':
          return share >= ALL
            ? `${name} ${share >= NEVER ? 'never' : 'hardly ever'} waits for others${one === 'shift' ? ' outside breaks' : ''}.`
            : `${name} waits for others for only ${formatShare(1 - share)} of the ${one === 'shift' ? 'time outside breaks' : one}${alone ? '' : ', less than any other station'}.`
        case 'starved':
          return `${busiest} is without a carrier for ${formatShare(share)} of the ${one}.`
        case 'blocked':
          return `${busiest} cannot let go of its carrier for ${formatShare(share)} of the ${one}.`
        default:
          return `${name} is ${WAITS[state] ?? state} for ${formatShare(share)} of the ${one}${alone ? '' : ', the longest such wait of any station'}.`
      }
    }
  }
}

const WAITS: Readonly<Record<string, string>> = {
  'waiting for product': 'waiting for products',
  'waiting for receiver': 'waiting for its receiver',
  'waiting for operator': 'waiting for an operator',
}
