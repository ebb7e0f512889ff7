/** Right scenarios that several tests read, as texts; the files stand in `scenarios/`. */
import { readFileSync } from 'node:fs'
import { readScenario, type Scenario } from '@loopwright/scenario'

const textOf = (name: string): string => readFileSync(new URL(`scenarios/${name}.yaml`, import.meta.url), 'utf8')

/** A loop of ten zones with ramps, one random time, a stop and a calendar. */
export const SMALL_LINE = textOf('small')

/** Constant times, no ramps: the law of the loop is exact. */
export const EXACT_LINE = textOf('exact')

/** From a store and back to it, by two ways. */
export const OPEN_LINE = textOf('open')

/** A loop of ten zones with chance, stops and a shift, without ramps. */
export const RING = textOf('ring')

/** Sweeps of a notebook: ten zones, two stations, one of them with the work that tests change. */
export const TEN_ZONES = textOf('tenZones')

/** The ring, with its text changed. */
export const testLine = (change: (text: string) => string = (text) => text): Scenario => scenarioOf(change(RING))

/** A text that must be right. */
export function scenarioOf(text: string): Scenario {
  const { scenario, problems } = readScenario(text)
  if (scenario === null) throw new Error(JSON.stringify(problems))
  return scenario
}
