/** Physical sense of a line: what no single value can show. Errors where it cannot be built, warnings where it is doubtful. */
import { distributionMean } from '@loopwright/stats'
import { clearTime, moveTime, REST } from '../moves/motion.ts'
import { STORE } from '../spec.ts'
import { CLOCK_STEP } from './clockStep.ts'
import { at, type Finding, found } from './finding.ts'
import { isRing, type DraftLine, type DraftPath, type DraftZone } from './draftLine.ts'
import { sentences as say } from './sentences.ts'
import { REACH_SECONDS } from './timeReach.ts'

const metres = (value: number): string => `${Number(value.toPrecision(6))} m`
const seconds = (value: number): string => `${Number(value.toPrecision(4))} s`

/** True where the clear time of the path is made from carrier length and speed. */
const clearIsDerived = (path: DraftPath, zone: DraftZone | null): boolean =>
  zone !== null && path.clearSeconds === null && (zone.release === 'single' || zone.transfer !== null)

/** Each path has its times, or what they are made of, and carriers fit where they go. */
function checkPaths(line: DraftLine): Finding[] {
  const { zones, paths, carriers } = line
  const findings: Finding[] = []
  for (const [index, path] of paths.entries()) {
    const zone = zones[path.from] ?? null
    const next = zones[path.to] ?? null
    if (path.moveSeconds === null && path.distanceMetres === null) {
      if (next === null) findings.push(found(at('path', index, 'distance'), say.storeDistance(zone?.name ?? '')))
      else findings.push({ place: at('path', index, 'length'), rule: 'length', zone: next.name, say: say.zoneWithoutLength })
    }
    const needsSpeed = path.moveSeconds === null || clearIsDerived(path, zone)
    if (needsSpeed && path.speedMetresPerSecond === null)
      findings.push({ place: at('path', index, 'speed'), rule: 'speed', zone: zone?.name ?? 'store', say: say.speedNeeded })
    if (!(derivedMove(path, next) <= REACH_SECONDS))
      findings.push({ place: at('path', index, 'speed'), rule: 'move', zone: zone?.name ?? 'store', say: say.moveBeyondReach })
    if (carriers === null || zone === null) continue
    const which = path.across ? 'width' : 'length'
    const size = path.across ? carriers.widthMetres : carriers.lengthMetres
    if (clearIsDerived(path, zone) && size === null) {
      const needed = (names: readonly string[]) => say.carrierSizeNeeded(which, names)
      findings.push({ place: at('carriers'), rule: which, zone: zone.name, say: needed })
    }
    if (size === null || size === undefined) continue
    const sensor = zone.sensorBeforeStopMetres
    if (clearIsDerived(path, zone) && sensor !== undefined && sensor >= size)
      findings.push({ place: at('zone', path.from, 'sensorBeforeStop'), rule: 'sensor', zone: zone.name, say: say.sensorTooEarly })
    const room = next?.lengthMetres ?? null
    if (next === null || room === null || size <= room) continue
    const long = (names: readonly string[]) => say.carrierTooLong(which, names, metres(size), metres(room))
    findings.push({ place: at('carriers', 0, which), rule: `size ${room}`, zone: next.name, say: long })
  }
  const moves = paths.map(({ moveSeconds }) => (moveSeconds === null || moveSeconds === undefined ? null : distributionMean(moveSeconds)))
  if (paths.length > 0 && moves.every((mean) => mean !== null && mean < CLOCK_STEP))
    findings.push(found(at('paths'), say.movesTakeNoTime()))
  return findings
}

/** Seconds of a move from rest to rest that the drive gives; 0 where it does not. */
function derivedMove(
  { moveSeconds, distanceMetres, speedMetresPerSecond, accelerationMetresPerSecondSquared }: DraftPath,
  next: DraftZone | null,
): number {
  const distance = distanceMetres ?? next?.lengthMetres
  if (moveSeconds !== null || !distance || !speedMetresPerSecond) return 0
  return moveTime(distance, speedMetresPerSecond, accelerationMetresPerSecondSquared ?? null, 2)
}

/** A station that may stop its section must be in one. */
const checkSafety = ({ zones, stations, sections }: DraftLine): Finding[] =>
  stations.flatMap(({ zone, safetyStop }, index) =>
    safetyStop === null || zone === null || sections.some((section) => section.zones.includes(zone))
      ? []
      : [found(at('station', index, 'safetyStop'), say.safetyWithoutSection(zones[zone]!.name))],
  )

/** Zones that nothing leads to, or out of. */
function checkWays({ zones, paths }: DraftLine): Finding[] {
  return (['to', 'from'] as const).flatMap((end) => {
    const reached = new Set(paths.map((path) => path[end]))
    const lonely = zones.filter((_, zone) => !reached.has(zone)).map(({ name }) => name)
    return paths.length === 0 || lonely.length === 0 ? [] : [found(at('paths', 0, end), say.zoneWithoutWay(lonely, end === 'to'))]
  })
}

/** How many carriers the line can take, and can start with. */
function checkCarriers(line: DraftLine): Finding[] {
  const { zones, paths, carriers } = line
  if (carriers === null) return []
  const { count, start } = carriers
  const findings: Finding[] = []
  const inStore = start === 'store' || (Array.isArray(start) && start.includes(STORE))
  if (inStore && paths.length > 0 && !paths.some(({ from }) => from === STORE))
    findings.push(found(at('carriers', 0, 'start'), say.storeWithoutWay()))
  if (zones.length === 0 || start === 'store' || zones.some(({ transfer }) => transfer === undefined)) return findings
  const places = zones.filter(({ transfer }) => transfer?.enterOnlyIfExitClear !== true).length
  const place = at('carriers', 0, 'count')
  if (places === 0) findings.push(found(at('zone', 0), say.allExitClear()))
  else if (isRing(line) && count >= zones.length) findings.push(found(place, say.carriersFillLoop(count, zones.length)))
  else if (count > places && typeof start === 'string') findings.push(found(place, say.carriersDoNotFit(count, places)))
  else if (isRing(line) && count >= places) findings.push(found(place, say.carriersGridlock(count)))
  return findings
}

/** An odd number of turns would leave the carrier sideways; a square one does not show it. */
function checkCorners(line: DraftLine): Finding[] {
  const { zones, paths, carriers } = line
  if (!isRing(line)) return []
  const turning = paths.filter(
    (path) => zones[path.from]!.transfer !== null && paths[(path.from + paths.length - 1) % paths.length]!.toPosition !== path.fromPosition,
  )
  const square = carriers !== null && carriers.lengthMetres === carriers.widthMetres
  return turning.length % 2 === 1 && !square ? [found(at('corners'), say.cornersOdd(turning.length))] : []
}

/** A station that needs more people than cover it stands still for ever. */
const checkOperators = ({ stations, operators }: DraftLine): Finding[] =>
  stations.flatMap(({ name, operatorsNeeded }, index) => {
    const there = operators.filter((operator) => operator.stations.includes(index)).length
    if (operatorsNeeded === undefined || there === 0 || operatorsNeeded <= there) return []
    return [found(at('station', index, 'operatorsNeeded'), say.operatorsFew(name, operatorsNeeded, there))]
  })

/** Products are loaded and taken off. */
const checkDuties = ({ stations }: DraftLine): Finding[] => [
  ...(stations.some(({ load }) => load !== null) ? [] : [found(at('stations', 0, 'load'), say.noLoad())]),
  ...(stations.some(({ unload }) => unload !== null) ? [] : [found(at('stations', 0, 'unload'), say.noUnload())]),
]

/**
 * A zone that takes longer to clear than any station works.
 *
 * @param longest  mean seconds of the longest stay at a station, its release included
 */
function checkClears(line: DraftLine, longest: number): Finding[] {
  const clears = line.paths.map((path) => (line.zones[path.from] === undefined ? 0 : clearSeconds(line, path)))
  const slowest = clears.indexOf(Math.max(...clears))
  const path = line.paths[slowest]
  if (path === undefined || !(longest > 0) || !(clears[slowest]! > longest && clears[slowest]! <= REACH_SECONDS)) return []
  const { name } = line.zones[path.from]!
  return [found(at('path', slowest, 'clear'), say.clearLong(name, seconds(clears[slowest]!), seconds(longest)))]
}

/** Mean clear time from rest (MODEL.md §3), with the change back of a transfer; 0 where it is not known. */
function clearSeconds({ zones, carriers, reactionSeconds }: DraftLine, path: DraftPath): number {
  const zone = zones[path.from]!
  if (path.clearSeconds === undefined || path.clearSeconds === 'move') return path.moveSeconds ? distributionMean(path.moveSeconds) : 0
  if (path.clearSeconds !== null) return distributionMean(path.clearSeconds)
  const size = path.across ? carriers?.widthMetres : carriers?.lengthMetres
  const sensor = zone.sensorBeforeStopMetres
  if (!clearIsDerived(path, zone) || !size || !path.speedMetresPerSecond || sensor === undefined) return 0
  const change = path.fromPosition === 'high' ? (zone.transfer?.lowerSeconds ?? 0) : 0
  return clearTime(size, sensor, path.speedMetresPerSecond, path.accelerationMetresPerSecondSquared ?? null, reactionSeconds, REST) + change
}

/**
 * All that is to be said of the parts of a line, as far as it is known.
 *
 * @param longest  mean seconds of the longest stay at a station, its release included; null where it is not known
 * @example checkParts(line, null) // => []
 */
export const checkParts = (line: DraftLine, longest: number | null): Finding[] => [
  ...checkSafety(line),
  ...checkPaths(line),
  ...checkWays(line),
  ...checkCorners(line),
  ...checkCarriers(line),
  ...checkDuties(line),
  ...checkOperators(line),
  ...(longest === null ? [] : checkClears(line, longest)),
]
