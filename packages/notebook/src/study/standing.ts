/** What stands under every story: the inputs it rests on, and the cautions. */
import { lawOrNull } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'
import { workingSeconds } from '@loopwright/study'
import type { SweepStoryOptions } from '../carrierSweepStory.ts'
import type { CautionCell, ProseCell, TableCell } from '../cell.ts'
import { assumptionCells } from '../inputs/assumptions.ts'
import { defaultInputs } from '../inputs/defaultInputs.ts'
import { standingCautions } from '../sweep/cautions.ts'

export interface Standing {
  /** all inputs, in shop-floor units */
  readonly assumptions: readonly (ProseCell | TableCell)[]
  readonly cautions: readonly CautionCell[]
}

/** @param scenario  the one as it stands, not a proposal */
export function standing(scenario: Scenario, { scenarioText, scenarioFile, readBeside }: SweepStoryOptions): Standing {
  const { line } = scenario
  const found = lawOrNull(line)
  const defaults = scenarioText === undefined ? null : defaultInputs(scenarioText, scenarioFile, readBeside ?? (() => null))
  return {
    assumptions: assumptionCells(scenario, { law: found, lawSeconds: (found?.unitsPerLap ?? 1) * workingSeconds(line) }, defaults),
    cautions: standingCautions(line),
  }
}
