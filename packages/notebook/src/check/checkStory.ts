/** The story of a check, as cells: what was understood of a scenario. Nothing is run. */
import type { Scenario, ScenarioNotes } from '@loopwright/scenario'
import { lineFacts } from '@loopwright/study/change'
import {
  type AnswerCell,
  type CautionCell,
  type Cell,
  type PlanCell,
  type ProseCell,
  proseCell,
  type TableCell,
  tableCell,
} from '../cells/cell.ts'
import { limitsTold } from '../limits/limitWords.ts'
import { limitCells, problemWarnings, type Standing, standing, standingCells } from '../study/standing.ts'
import { markdownOf } from '../words/markdownOf.ts'
import type { Tale } from '../cells/tale.ts'
import type { StoryOptions } from '../words/storyOptions.ts'
import { titledLine } from '../words/titledLine.ts'
import { stationsTable, stopsTable, variantsTable } from './checkTables.ts'
import {
  breaksSentence,
  carriersSentence,
  lineSentence,
  tablesSentence,
  variationsSentence,
  verdictSentence,
  windowSentence,
  zoneNamesSentence,
} from './checkWords.ts'
import { linePlan } from './linePlan.ts'
import { lawSentences, leftOutSentence, taktSentence } from './lawWords.ts'

/** With the inputs; those that a terminal shows too stand open. */
export interface CheckStory extends Standing, Tale {
  readonly answer: AnswerCell
  /** what the scenario is warned of */
  readonly warnings: readonly CautionCell[]
  /** the line, drawn */
  readonly plan: PlanCell
  /** line, carriers, window, breaks */
  readonly words: ProseCell
  readonly stations: TableCell
  /** the slowest of what limits the line, by name, and what it means for the plan */
  readonly limits: ProseCell
  /** null: nothing is known to limit it */
  readonly limitTable: TableCell | null
  /** takt and law; null: nothing to say of them */
  readonly law: ProseCell | null
  /** null: nothing stops it */
  readonly stops: TableCell | null
  /** null: there is one variant */
  readonly variants: TableCell | null
}

/** Inputs that a terminal shows too: nothing else here tells of them. */
const OPEN: readonly string[] = ['section-inputs', 'inputs-general']

/** The heading of the inputs stands open only over what does. */
function opened(inputs: Standing['assumptions']): Standing['assumptions'] {
  const any = inputs.some(({ id }) => id === 'inputs-general')
  return inputs.map((cell) => (any && OPEN.includes(cell.id) ? { ...cell, pageOnly: false } : { ...cell, pageOnly: true }))
}

/**
 * The story's parts, by name.
 *
 * @param notes  what the reader made of the file
 * @throws RangeError  where nothing can be said of the line
 * @example checkStory(scenario, readScenario(text).notes, { scenarioFile: 'ring.yaml' }).question // => 'What was understood of the scenario?'
 */
export function checkStory(scenario: Scenario, notes: ScenarioNotes, options: StoryOptions): CheckStory {
  const facts = lineFacts(titledLine(scenario))
  const told = limitsTold(scenario, facts.limits)
  // the sentences of the limits say what they mean for the plan
  const limitWarnings = told.warnings.filter(({ code }) => code !== 'plan above a limit')
  const warnings = [...problemWarnings(options), ...limitCells(limitWarnings)]
  const law = [taktSentence(scenario, facts, told.constraint), ...lawSentences(scenario, facts), leftOutSentence(scenario, facts)].filter(
    (sentence) => sentence !== null,
  )
  const { assumptions, cautions, live } = standing(scenario, options)
  const words = [
    lineSentence(scenario, facts),
    zoneNamesSentence(notes),
    tablesSentence(notes),
    carriersSentence(scenario),
    windowSentence(scenario, notes),
    breaksSentence(scenario, notes),
    variationsSentence(notes),
  ]
  const verdict = verdictSentence(scenario, options.scenarioFile, (options.problems?.length ?? 0) + limitWarnings.length)
  const parts = {
    answer: { kind: 'answer', id: 'check-answer', sentences: [verdict] } satisfies AnswerCell,
    warnings,
    plan: linePlan(scenario),
    words: proseCell('check-words', ...words.filter((one) => one !== null).map(markdownOf)),
    stations: tableCell('check-stations', stationsTable(facts)),
    limits: proseCell('check-limits', ...told.sentences.map(markdownOf)),
    limitTable: told.table === null ? null : tableCell('check-limits-table', told.table),
    law: law.length === 0 ? null : proseCell('check-law', ...law.map(markdownOf)),
    stops: facts.stops.length > 0 ? tableCell('check-stops', stopsTable(facts)) : null,
    variants: facts.variants.length > 1 ? tableCell('check-variants', variantsTable(facts)) : null,
    assumptions: opened(assumptions),
    cautions,
    live,
  }
  const { answer, stations, limits, limitTable, stops, variants } = parts
  const cells: Cell[] = [
    answer,
    ...warnings,
    parts.plan,
    parts.words,
    limits,
    ...(limitTable === null ? [] : [limitTable]),
    stations,
    ...(parts.law === null ? [] : [parts.law]),
    ...(stops === null ? [] : [stops]),
    ...(variants === null ? [] : [variants]),
    ...standingCells(parts),
  ]
  return { ...parts, question: 'What was understood of the scenario?', cells }
}
