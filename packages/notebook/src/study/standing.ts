/** What stands under every story: the inputs it rests on, and the cautions; and what the scenario itself is warned of. */
import { lawOrNull, workingSeconds } from '@loopwright/line/bounds'
import type { Scenario } from '@loopwright/scenario'
import { type CautionCell, type LiveCell, type ProseCell, sectionCell, type TableCell, warningCell } from '../cells/cell.ts'
import { assumptionCells } from '../inputs/assumptions.ts'
import { defaultInputs } from '../inputs/defaultInputs.ts'
import { type LimitsTold, limitsTold } from '../limits/limitWords.ts'
import { liveCell } from '../live/liveCell.ts'
import { standingCautions } from '../sweep/cautions.ts'
import { markdownOf } from '../words/markdownOf.ts'
import type { StoryOptions } from '../words/storyOptions.ts'
import { sourceRead } from './sourceRead.ts'

export interface Standing {
  /** all inputs, in shop-floor units */
  readonly assumptions: readonly (ProseCell | TableCell)[]
  readonly cautions: readonly CautionCell[]
  /** what the reader of a page may change; null: the text of the scenario is not at hand */
  readonly live: LiveCell | null
}

/** @param scenario  the one as it stands, not a proposal */
export function standing(scenario: Scenario, options: StoryOptions): Standing {
  const { line } = scenario
  const found = lawOrNull(line)
  const read = sourceRead(options)
  const defaults = read === null ? null : defaultInputs(read, options.scenarioFile)
  return {
    assumptions: assumptionCells(scenario, { law: found, lawSeconds: (found?.unitsPerLap ?? 1) * workingSeconds(line) }, defaults),
    cautions: standingCautions(line),
    live: read === null ? null : liveCell({ ...options, read }),
  }
}

/** Inputs and cautions as the end of a tale; a page shows what its reader may change further up. */
export function standingCells({ assumptions, cautions, live }: Standing): (ProseCell | TableCell | CautionCell | LiveCell)[] {
  return [...(live === null ? [] : [live]), ...assumptions, sectionCell('section-cautions', 'Cautions'), ...cautions]
}

/** What the scenario and its limits are warned of, before anybody reads a number: a plan above a limit, stops longer than the time between them. */
export function scenarioWarnings(scenario: Scenario, options: StoryOptions): CautionCell[] {
  return [...problemWarnings(options), ...limitCells(limitsTold(scenario).warnings)]
}

/** A cell for each kind of warning. */
export function limitCells(warnings: LimitsTold['warnings']): CautionCell[] {
  const cell = (id: string, title: string, code: (typeof warnings)[number]['code']): CautionCell[] => {
    const told = warnings.filter((one) => one.code === code).map(({ text }) => markdownOf(text))
    return told.length === 0 ? [] : [warningCell(id, title, told.length === 1 ? told[0]! : told.map((text) => `- ${text}`).join('\n'))]
  }
  return [
    ...cell('limits', 'The plan is more than the line can make as it stands', 'plan above a limit'),
    ...cell('stops', 'Stops longer than the time between them', 'stops longer than the time between them'),
    ...cell('events', 'More happens in a run than can be meant', 'many events'),
  ]
}

/** What the reader of the scenario warned of, as one cell; none where there is nothing. */
export function problemWarnings({ problems = [] }: StoryOptions): CautionCell[] {
  if (problems.length === 0) return []
  const said = problems.map(
    ({ line, message, fix }) => `- line ${line}: ${markdownOf([message, fix].filter((text) => text !== '').join('; '))}.`,
  )
  return [{ ...warningCell('scenario', 'The scenario', said.join('\n')), pageOnly: true }]
}
