/** Findings as rows: most figures of the conveyor differ in nothing but what they say. */
import { compareWith, type Evidence, type Guidance, type ScreeningFinding, type ScreeningUnit } from './finding.ts'
import type { ScreeningInputs } from './inputs.ts'

/** A figure, its limit, and what both rest on. */
export type Row = readonly [
  id: string,
  topic: string,
  what: string,
  value: number | null,
  unit: ScreeningUnit,
  side: 'at most' | 'at least',
  limit: number | null,
  evidence: Evidence,
  source: string,
  assumptions: readonly string[],
  measure: string,
]

/** Compares each with its limit; a limit of null is not known. */
export const rows = (inputs: ScreeningInputs, all: readonly (Row | null)[]): ScreeningFinding[] =>
  all
    .filter((row) => row !== null)
    .map(([id, topic, what, value, unit, side, limit, evidence, source, assumptions, measure]) => {
      const guidance: Guidance | null = limit === null ? null : { value: limit, upTo: null, side, source, edition: 'none', evidence }
      return compareWith({ id, topic, what, value, unit, guidance, assumptions, measure }, inputs)
    })

export const MECHANICS = 'mechanics of the motion'
export const USUAL = 'usual practice of conveyor design'
