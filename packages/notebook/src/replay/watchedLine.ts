/** A line as its replay draws it: the plan, and what people call its parts. */
import { isPlainLoop } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'
import type { Picture } from '../cells/figure.ts'
import { planZones } from '../sweep/plan.ts'

export interface WatchedLine {
  /** without a value in any zone */
  readonly plan: Omit<Extract<Picture, { kind: 'plan' }>, 'kind'>
  readonly zones: readonly string[]
  /** in the order of the line */
  readonly stations: readonly { readonly name: string; readonly title: string; readonly zone: number }[]
  /** of each path its ends; STORE (−1): the store */
  readonly paths: readonly { readonly from: number; readonly to: number }[]
}

export function watchedLine(scenario: Scenario): WatchedLine {
  const { line } = scenario
  const paths = line.paths.map(({ from, to, manual }) => ({ from, to, manual: manual !== null }))
  return {
    plan: { zones: planZones(scenario, null), paths: isPlainLoop(line) ? null : paths, valueMeaning: null },
    zones: line.zones.map(({ name }) => name),
    stations: line.stations.map(({ name, title, zone }) => ({ name, title, zone })),
    paths: paths.map(({ from, to }) => ({ from, to })),
  }
}
