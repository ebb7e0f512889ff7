/** Everything that can be said about a complete line: whether it can be built, and what about it is doubtful. */
import { completeLine, type GivenLine } from '../builder/givenLine.ts'
import { mixShares } from '../bounds/law.ts'
import type { LineProblem } from '../builder/report.ts'
import type { LineSpec } from '../spec.ts'
import { type Finding, type Place, tellTogether } from './finding.ts'
import { longestStay } from './meanStay.ts'
import { checkParts } from './physical.ts'
import { checkFlow } from './flow.ts'

/**
 * The findings about a line, errors and warnings, by the names of its parts.
 *
 * @example checkLine(loopLine({ zones: 4, carriers: 3, end: 60, paths: [{ from: 0, move: 2 }, { from: 1, move: 2 }, { from: 2, move: 2 }, { from: 3, move: 2 }] }).spec).map(({ code }) => code) // => ['W_NO_LOAD', 'W_NO_UNLOAD']
 */
export function checkLine(given: GivenLine): LineProblem[] {
  const spec = completeLine(given)
  const weights = mixShares(spec.mix, spec.variants.length)
  return told(spec, [...checkParts(spec, longestStay(spec.stations, weights)), ...checkFlow(spec)])
}

/** Errors of zones, paths and carriers alone, of a line whose stations are not known yet. */
export const checkLayout = (spec: LineSpec): LineProblem[] =>
  told(spec, checkParts({ ...spec, stations: [], operators: [] }, null)).filter(({ severity }) => severity === 'error')

const told = (spec: LineSpec, findings: readonly Finding[]): LineProblem[] =>
  tellTogether(findings, (place) => {
    const path = pathOf(spec, place)
    return { at: path, key: path }
  }).map(({ at, sentence }) => ({ path: at, ...sentence }))

/** Where it stands, as a person would say it: `zones.Z03.length`. What all zones or paths may have in common stands at the whole. */
function pathOf({ zones, stations }: LineSpec, { part, index, key }: Place): string {
  if (part === 'path') return key === 'length' ? 'zones' : key === 'speed' ? 'drive.speed' : `paths[${index}]`
  const dot = key === '' ? '' : `.${key}`
  if (part === 'zone') return key === 'sensorBeforeStop' ? 'zones' : `zones.${zones[index]!.name}${dot}`
  if (part === 'station') return `stations.${stations[index]!.name}${dot}`
  return part === 'carriers' ? `carriers${dot}` : part === 'line' ? key : part === 'corners' ? 'zones' : part
}
