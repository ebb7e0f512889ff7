/** How far the people of an alternative walk: to where the next work is, with each push, and at their tasks. */
import type { Alternative, Decision } from '@loopwright/decide'
import { measuredWalks, metresOf, type Walked, type WalkPart, walksOn } from '@loopwright/decide/screening'
import { nearest } from '@loopwright/line/check'
import type { Scenario } from '@loopwright/scenario'
import type { LinePeople } from '@loopwright/study/compare'

/** metres per second */
const WALKING = 1.1

/**
 * Whether the file states ways that are walked for each unit: the carriers of each station have to be counted then.
 *
 * @example statesWalks({ screening: null }) // => false
 */
export const statesWalks = ({ screening }: Pick<Decision, 'screening'>): boolean => (screening?.walks.length ?? 0) > 0

/**
 * Every way that was measured has its task or station in one alternative at least: asked before anything runs.
 *
 * @throws RangeError  names the first that no alternative has
 * @example needsWalks(runs) // => undefined
 */
export function needsWalks({
  decision,
  scenarios,
  file,
}: {
  readonly decision: Decision
  readonly scenarios: readonly Scenario[]
  readonly file: string
}): void {
  const walks = decision.screening?.walks ?? []
  const lost = walks.find((walk) => scenarios.every(({ line }) => walksOn(line, [walk]).length === 0))
  if (lost === undefined) return
  const known = [...new Set(scenarios.flatMap(({ line }) => [...line.tasks, ...line.stations.map(({ name }) => name)]))]
  const near = nearest(lost.of, known)
  const meant = near === null ? `there is ${known.join(', ')}` : `did you mean "${near}"?`
  throw new RangeError(`"screening.walks.${lost.of}" in ${file}: no alternative has a task or station of that name; ${meant}`)
}

/**
 * What each person walks in a shift, as far as anything is known of it.
 *
 * @param walks  ways that were measured a unit; they count where the carriers of each station were counted
 * @example walkedBy(scenario.line, { name: 'a', watched: 2, cycles: [], walks: [], handlings: [{ operator: 'Ann', count: 300, seconds: 900 }] }, { metresPerHandling: 3 }, [])[0].parts[0].metresEach // => 3
 */
export function walkedBy(
  line: Scenario['line'],
  people: LinePeople,
  { metresPerHandling }: Pick<Alternative, 'metresPerHandling'>,
  walks: Parameters<typeof measuredWalks>[1],
): Walked[] {
  const parts = new Map<string, WalkPart[]>()
  const add = (person: string, part: WalkPart): void => void parts.set(person, [...(parts.get(person) ?? []), part])
  if (walks.length > 0 && people.cycles.length > 0)
    for (const { person, parts: its } of measuredWalks(line, walks, people.cycles)) for (const part of its) add(person, part)
  for (const { operator, count, seconds } of people.walks)
    if (count > 0)
      add(operator, {
        of: 'from one station to another',
        metresEach: (seconds * WALKING) / count,
        times: count,
        known: `simulated walks at ${WALKING} m/s (common practice, no source: 1.0 to 1.2)`,
      })
  for (const { operator, count } of people.handlings)
    if (count > 0 && metresPerHandling !== null)
      add(operator, {
        of: 'pushes and pulls',
        metresEach: metresPerHandling,
        times: count,
        known: 'simulated pushes, way of each as the file gives it',
      })
  return [...parts].map(([person, its]) => ({ person: personTitle(line, person), parts: its }))
}

/** A station's own operator goes by what people call the station. */
export const personTitle = ({ stations }: Scenario['line'], name: string): string =>
  stations.find((station) => station.name === name)?.title ?? name

/** Metres of the person who walks most; null: somebody pushes, and nothing is known of that way nor of any walk. */
export function mostWalked(
  walked: readonly Walked[],
  { handlings, walks }: Pick<LinePeople, 'handlings' | 'walks'>,
  { metresPerHandling }: Pick<Alternative, 'metresPerHandling'>,
): number | null {
  const pushes = handlings.some(({ count }) => count > 0)
  return pushes && metresPerHandling === null && walks.length === 0 ? null : Math.max(0, ...walked.map(metresOf))
}
