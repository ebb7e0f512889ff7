/** Everything that a screening looks at, in one list. */
import type { GivenLine } from '@loopwright/line'
import { driveFindings, loadFindings, otherFindings, zoneFindings } from './conveyor.ts'
import { GUIDANCE_WORDS, type GuidanceWord, type ScreeningFinding } from './finding.ts'
import { figuresByWord } from './figures.ts'
import type { ScreeningInputs } from './inputs.ts'
import { type LineFigures, lineFigures } from './lineFigures.ts'
import { type Handlings, handlingFindings, heightFindings, liftFindings } from './people.ts'
import { pushFindings } from './pushForce.ts'
import { type Walked, walkFindings } from './walking.ts'
import { rollerFindings } from './rollers.ts'
import { deviceFindings, gapFindings, speedFindings } from './reach.ts'

/** Figures against published guidance, and how many fell where. Never a verdict on a hazard. */
export interface ScreeningResult {
  readonly kind: 'screening'
  readonly figures: LineFigures
  readonly findings: readonly ScreeningFinding[]
  /** of each person with a way that was measured */
  readonly walked: readonly Walked[]
  /** figures, each once however many sources judge it: above where one of them says so */
  readonly counts: Readonly<Record<GuidanceWord, number>>
}

/**
 * Screens a line and its workplaces: forces, heights, gaps, distances, speed, rollers, drive, slip and tipping, handlings.
 *
 * @param handlings  of the stations whose operators push or pull, from simulated shifts; empty: not known
 * @param walked     by people for whose tasks or stations a way was measured
 * @example screen(scenario.line, { ...NOTHING_GIVEN, mass: 115, people: 'working' }, []).findings.map(({ id }) => id) // => ['gap-standing', 'speed', 'stopping']
 */
export function screen(
  line: GivenLine,
  inputs: ScreeningInputs,
  handlings: readonly Handlings[],
  walked: readonly Walked[] = [],
): ScreeningResult {
  const figures = lineFigures(line)
  const findings = [
    ...pushFindings(inputs),
    ...handlingFindings(handlings, inputs),
    ...walkFindings(walked, inputs),
    ...heightFindings(inputs),
    ...liftFindings(inputs),
    ...gapFindings(inputs, figures),
    ...deviceFindings(inputs),
    ...speedFindings(inputs, figures),
    ...rollerFindings(inputs, figures),
    ...zoneFindings(inputs, figures),
    ...driveFindings(inputs, figures),
    ...loadFindings(inputs, figures),
    ...otherFindings(inputs, figures),
  ]
  const told = figuresByWord(findings)
  const counts = Object.fromEntries(GUIDANCE_WORDS.map((word) => [word, told[word].length])) as Record<GuidanceWord, number>
  return { kind: 'screening', figures, findings, walked, counts }
}

/** Where nothing was given: nothing is checked but what the line itself says. */
export const NOTHING_GIVEN: ScreeningInputs = {
  secondHand: false,
  fromMemory: false,
  ownCopy: [],
  mass: null,
  push: null,
  heights: [],
  gaps: [],
  devices: [],
  people: null,
  rollers: null,
  drive: null,
  load: null,
  zone: null,
  curve: null,
  volts: null,
  lifts: [],
  walks: [],
}
