/** Which features of the model a line has, and which a run has shown. */
import type { LineSpec } from '@loopwright/line'
import type { ReadAloud } from './readAloud.ts'
import { isExitClear, positionIn, positionOut, zoneAfter } from './world.ts'

/** Features that a specification has, as it is written. */
export function featuresOf(spec: LineSpec): Set<string> {
  const features = new Set<string>()
  const note = (name: string, has: boolean): void => {
    if (has) features.add(name)
  }
  const { paths, zones, stations, breakdowns, breaks, mix, carriers } = spec
  note(
    'derived move',
    paths.some((path) => path.moveSeconds === null),
  )
  note(
    'given move',
    paths.some((path) => path.moveSeconds !== null),
  )
  note('given and derived moves', features.has('derived move') && features.has('given move'))
  note(
    'given clear',
    paths.some((path) => path.clearSeconds !== null && path.clearSeconds !== 'move'),
  )
  note(
    'clear as the move drawn',
    paths.some((path) => path.clearSeconds === 'move'),
  )
  note(
    'move of 0 s',
    paths.some((path) => path.moveSeconds?.kind === 'constant' && path.moveSeconds.value === 0),
  )
  note(
    'no ramp',
    paths.some((path) => path.moveSeconds === null && path.accelerationMetresPerSecondSquared === null),
  )
  note(
    'across',
    paths.some((path) => path.across && path.clearSeconds === null),
  )
  note(
    'train release',
    zones.some((zone, z) => zone.release === 'train' && zone.transfer === null && paths[z]!.clearSeconds === null),
  )
  zones.forEach((zone, z) => {
    if (zone.transfer === null) return
    const [wayIn, wayOut] = [positionIn(spec, z), positionOut(spec, z)]
    note(`transfer in ${wayIn}, out ${wayOut}`, wayIn !== wayOut)
    note('transfer that need not change', wayIn === wayOut)
    note('position change at a station', wayIn !== wayOut && stations.some((station) => station.zone === z))
    note('exit-clear transfer', isExitClear(spec, z))
    note('two exit-clear transfers in a row', isExitClear(spec, z) && isExitClear(spec, zoneAfter(spec, z)))
  })
  const users = new Map<number, number>()
  for (const station of stations) {
    const duties = (['unload', 'load', 'work'] as const).filter((duty) => station[duty] !== null)
    note(`station with ${duties.join(' + ')}`, true)
    note('automatic station', station.operatorsNeeded === 0)
    note('works in breaks', station.worksInBreaks && breaks.length > 0)
    note('constant release', station.releaseSeconds.kind === 'constant' && station.releaseSeconds.value > 0)
    note('random release', station.releaseSeconds.kind !== 'constant')
    for (const duty of duties) {
      note('several tasks in a duty', station[duty]!.length > 1)
      note('duty without a task', station[duty]!.length === 0)
      note(
        'variant without a time',
        station[duty]!.some((task) => task.seconds.includes(null)),
      )
      for (const { task } of station[duty]!) users.set(task, (users.get(task) ?? 0) + 1)
    }
  }
  note(
    'shared task',
    [...users.values()].some((count) => count > 1),
  )
  for (const { part, clock } of breakdowns) note(`breakdown of ${part.kind}, ${clock}`, true)
  const parts = breakdowns.map((source) => JSON.stringify(source.part))
  note('two sources on a part', new Set(parts).size < parts.length)
  note('breaks, conveyor goes on', breaks.length > 0 && spec.conveyorDuringBreaks)
  note('breaks, conveyor stops', breaks.length > 0 && !spec.conveyorDuringBreaks)
  note(`mix ${mix.kind}`, true)
  note(`start ${Array.isArray(carriers.start) ? 'at zones named' : carriers.start}`, true)
  const places = zones.filter((_, z) => !isExitClear(spec, z)).length
  note('as many carriers as may be', carriers.count >= places - 1)
  return features
}

/** Features that a run has shown. */
export function featuresSeen(run: ReadAloud, spec: LineSpec): Set<string> {
  const seen = new Set<string>()
  const { log, result } = run
  seen.add(`ended: ${result.end.reason}`)
  if (log.some((entry) => entry.what === 'pass')) seen.add('passing')
  if (log.some((entry) => entry.what === 'brake')) seen.add('failed pass')
  if (log.some((entry) => entry.what === 'release start')) seen.add('release')
  if (result.output > 0) seen.add('output')
  const starts = log.filter((entry) => entry.what === 'move start')
  const startsAt = new Map<number, number[]>()
  for (const { t, carrier } of starts) startsAt.set(t, [...(startsAt.get(t) ?? []), carrier])
  const tied = starts.filter(({ t, carrier }) => startsAt.get(t)!.some((other) => other !== carrier))
  if (tied.length > 0.2 * starts.length) seen.add('many ties')
  if ([...startsAt.values()].some((list) => new Set(list).size < list.length)) seen.add('a carrier starts twice in one instant')
  const stationZones = new Set(spec.stations.map((station) => station.zone))
  if (hasEmptyPass(log, stationZones)) seen.add('a carrier leaves a station zone without a duty')
  for (const zone of result.zones) if (zone.stoppedBy.length > 1) seen.add('overlapping causes')
  return seen
}

/** a carrier leaves a station's zone, after it has come there, without a duty */
function hasEmptyPass(log: ReadAloud['log'], stationZones: ReadonlySet<number>): boolean {
  const came = new Set<number>()
  for (const entry of log) {
    if ((entry.what === 'at rest' || entry.what === 'pass') && stationZones.has(entry.zone)) came.add(entry.carrier)
    if (entry.what === 'duty start') came.delete(entry.carrier)
    if (entry.what === 'move start' && stationZones.has(entry.zone) && came.delete(entry.carrier)) return true
  }
  return false
}
