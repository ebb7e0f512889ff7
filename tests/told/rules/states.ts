/** If a text says that a station waits, is blocked or starved, that state is the longest of its waiting there. */
import { type StationStates, stationsOf } from '../document.ts'
import type { Judged } from '../rules.ts'
import { sentencesOf } from '../textParts.ts'

const SAID: readonly (readonly [pattern: RegExp, state: string])[] = [
  [/\bwait(s|ing)?( \w+)? for (an |the |its )?operators?\b/i, 'waiting for operator'],
  [/\bwait(s|ing)?( \w+)? for (a |the )?products?\b/i, 'waiting for product'],
  [/\bwait(s|ing)?( \w+)? for (a |the |its )?receivers?\b/i, 'waiting for receiver'],
  [/\b(is|are) (mostly |most of the time |mainly )?blocked\b/i, 'blocked'],
  [/\b(is|are) (mostly |most of the time |mainly )?starved\b/i, 'starved'],
]

/** What a station does when it is held up by nobody. */
const NO_WAIT = ['working', 'handling', 'exchanging', 'break']

export function stateLeads({ text, json, runs, command }: Judged): string[] {
  if (command.name === 'trace' || command.name === 'check') return []
  const own = stationsOf(json)
  const stations = own.length > 0 ? own : stationsOf(runs)
  return sentencesOf(text).flatMap((sentence) =>
    SAID.filter(([pattern]) => pattern.test(sentence) && !isExplanation(sentence)).flatMap(([, state]) => {
      const named = stations.filter(({ name, title }) => mentions(sentence, name) || mentions(sentence, title))
      const leads = named.length === 0 ? [leading(stations)] : named.map((station) => leading([station]))
      return leads.includes(state) ? [] : [`"${sentence}": ${leads.join(', ')} leads`]
    }),
  )
}

/** "Blocked: the carrier is done and cannot start" explains a word and names no station; nor does a cause of loss, which is no state. */
const isExplanation = (sentence: string): boolean =>
  /^(blocked|starved|waiting)\b[^.]*:/i.test(sentence) || /\b(cause|loss)\b/.test(sentence)

const mentions = (sentence: string, word: string): boolean =>
  new RegExp(`(?<![\\w])${word.replace(/[^\w ]/g, '.')}(?![\\w])`).test(sentence)

/** The longest waiting state of stations together. */
function leading(stations: readonly StationStates[]): string {
  const sums = new Map<string, number>()
  for (const { states } of stations)
    for (const [state, share] of Object.entries(states)) if (!NO_WAIT.includes(state)) sums.set(state, (sums.get(state) ?? 0) + share)
  return [...sums].sort(([, a], [, b]) => b - a)[0]?.[0] ?? 'nothing'
}
