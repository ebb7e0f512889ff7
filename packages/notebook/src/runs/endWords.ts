/** Why a run stood still before its end, in sentences. */
import { formatDuration } from '@loopwright/charts/table'
import { type LineSpec, listWords, type RunResult } from '@loopwright/line'
import { type Standstill, standstillOf } from '@loopwright/study'
import { heldBack } from '../words/listEnds.ts'

/** an end before this is one at the very start */
const SOON_SECONDS = 0.1
/** Names in one row before "and so on". */
const NAMES_MAX = 12

/** Why a run stood still before its end, and where; null where it did not. */
export function endSentence(end: RunResult['end'], line: LineSpec): string | null {
  if (end.reason === 'end of window' || end.atSeconds === null) return null
  const at = end.atSeconds < SOON_SECONDS ? 'at once' : `after ${formatDuration(end.atSeconds)}`
  if (end.reason === 'out of products')
    return `OUT OF PRODUCTS ${at}: the list of products has run out, and nothing more was made.${heldBackHere(end, line)}`
  const names = end.cycle.map((zone) => line.zones[zone]!.name)
  const circle = names.length === 0 ? '' : ` These zones wait for each other in a circle: ${shortList(names)}.`
  return `GRIDLOCK ${at}: the line stood still, and nothing more was made.${circle} ${reasonSentence(standstillOf(line, end)!, line, deadEnds(end))}`
}

/** Why the last products stay on the line: a station takes one off and then waits for one to load, in the way of those behind. (MODEL.md §5) */
function heldBackHere({ waits }: RunResult['end'], { stations }: LineSpec): string {
  const names = stations
    .filter(
      ({ zone, unload, load }) =>
        unload !== null && load !== null && waits.some(([, ahead]) => ahead === zone) && !waits.some(([from]) => from === zone),
    )
    .map(({ name }) => name)
  return heldBack(names)
}

/** Zones that are waited for and wait for nothing: a carrier there has no way on. */
function deadEnds({ waits }: RunResult['end']): number[] {
  const waiting = new Set(waits.map(([zone]) => zone))
  return [...new Set(waits.map(([, ahead]) => ahead))].filter((zone) => !waiting.has(zone))
}

const shortNames = (zones: readonly number[], line: LineSpec): string => {
  const names = zones.map((zone) => line.zones[zone]!.name)
  return listWords(names, NAMES_MAX)
}

/** The plain reason, and what would mend it; beside a circle also who waits for operators. */
function reasonSentence(standstill: Standstill, line: LineSpec, dead: readonly number[]): string {
  const { reason, merge, unmanned } = standstill
  const nobody = unmanned.length === 0 ? '' : ` ${nobodySentence(standstill, line)}`
  if (reason === 'too many carriers')
    return `There are too many carriers: every place to stand on the way round is taken. Fewer carriers, or an exit that is kept clear, would let it go on.${nobody}`
  if (reason === 'merge fills its own exit') {
    const name = line.zones[merge!]!.name
    return `${name}, where two ways meet, fills its own exit: what came in there waits for a zone that waits for it. Fewer carriers, or right of way at ${name} for those that leave the circle, may let it go on.${nobody}`
  }
  if (reason === 'no way on')
    return `No zones wait in a circle: ${dead.length === 0 ? 'some carrier' : `the carrier in ${shortNames(dead, line)}`} has no way on, so that those behind it wait for ever. See that each zone has a way out for every carrier that comes there.`
  return nobodySentence(standstill, line)
}

/** Who is waited for in vain: a station that needs more than cover it, else operators bound where they wait for others. */
function nobodySentence({ unmanned, understaffed }: Standstill, line: LineSpec): string {
  const names = (zones: readonly number[]): string => zones.map((zone) => line.zones[zone]!.name).join(', ')
  if (understaffed.length === 0)
    return `Operators wait for each other: whom the work or push at ${names(unmanned)} needs is bound to a station that waits for somebody else. Let more operators cover it, or need fewer.`
  const stations = understaffed.map((zone) => {
    const index = line.stations.findIndex((station) => station.zone === zone)
    const covering = line.operators.filter((operator) => operator.stations.includes(index)).length
    return `${line.zones[zone]!.name} needs ${line.stations[index]!.operatorsNeeded} operators, and ${covering} ${covering === 1 ? 'covers' : 'cover'} it`
  })
  const others = unmanned.filter((zone) => !understaffed.includes(zone))
  const more = others.length === 0 ? '' : ` ${names(others)} ${others.length === 1 ? 'waits' : 'wait'} for somebody who is bound so.`
  return `An operator waits for himself: the work at ${stations.join('; at ')}.${more} Let more operators cover it, or need fewer.`
}

const shortList = (names: readonly string[]): string =>
  names.length <= NAMES_MAX ? names.join(' → ') : `${names.slice(0, NAMES_MAX).join(' → ')} → … (${names.length} zones)`
