/** The story of a grid, as cells: which setting meets the plan and which makes most, what each factor does, and whether they depend on each other. */
import { gridCurves, gridTable, levelWords, settingWords } from '@loopwright/charts'
import { listWords } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'
import type { GridPoint, GridResult } from '@loopwright/study/compare'
import { type AnswerCell, type CautionCell, type Cell, type ChartCell, type SureCell, warningCell } from '../cells/cell.ts'
import { chartCell, openChartCell } from '../cells/chartCell.ts'
import { type Standing, scenarioWarnings, standing, standingCells } from '../study/standing.ts'
import { type Period, period } from '../sweep/period.ts'
import type { Tale } from '../cells/tale.ts'
import { listEndsWarning } from '../words/listEnds.ts'
import { listLines } from '../words/listLines.ts'
import { markdownOf } from '../words/markdownOf.ts'
import { lengthWarning, startSentence } from '../words/startWords.ts'
import { stoppedEarly } from '../words/stoppedEarly.ts'
import type { StudyStoryOptions } from '../words/storyOptions.ts'
import { factorName, gridFigures, gridSentences, gridSure } from './gridWords.ts'

/** With the inputs and cautions of the line as it stands. */
export interface GridStory extends Standing, Tale {
  readonly answer: AnswerCell
  /** said only where it holds: partial results, gridlock, a list that ran out, a best setting at the end of what was tried */
  readonly warnings: readonly CautionCell[]
  /** a curve for each level, with the table of means; null: nothing was run */
  readonly curves: ChartCell | null
  readonly sure: SureCell
  /** a cell for each setting of two factors, further factors in blocks, with the table of all settings; null: there is one factor, or nothing was run */
  readonly heat: ChartCell | null
}

/** settings that a warning names */
const NAMED_MAX = 8

/**
 * The story's parts, by name.
 *
 * @param scenario  as it stands
 * @example gridStory(scenario, await runGrid([3, 4].map((count) => ({ line: withCarriers(scenario.line, count), plan: null })), { factors: [{ name: 'carriers', levels: ['3', '4'] }], replications: 2 }, { seed: '1', workers: 0 }), { scenarioFile: 'ring.yaml' }).question // => 'What does the number of carriers do to the output?'
 */
export function gridStory(scenario: Scenario, result: GridResult, options: StudyStoryOptions): GridStory {
  const { id = 'grid' } = options
  const words = period(scenario)
  const ran = result.points.some(({ units }) => units.length > 0)
  const sure = gridSure(result, words)
  const parts = {
    answer: {
      kind: 'answer',
      id: `${id}-answer`,
      sentences: gridSentences(result, words),
      figures: gridFigures(result, words),
    } satisfies AnswerCell,
    warnings: [...warnings(scenario, result, words, id), ...scenarioWarnings(scenario, options), ...lengthWarning(scenario)],
    curves: ran ? { ...openChartCell(`${id}-curves`, gridCurves(result, { per: words.one })), lead: true } : null,
    sure: { kind: 'sure', id: `${id}-sure`, sentences: sure.length === 0 ? [] : [...sure, startSentence(scenario)] } satisfies SureCell,
    heat: ran && result.factors.length > 1 ? { ...chartCell(`${id}-table`, gridTable(result, { per: words.one })), pageOnly: true } : null,
    ...standing(scenario, options),
  }
  const shown: readonly (Cell | null)[] = [parts.answer, ...parts.warnings, parts.curves, parts.sure, parts.heat]
  return {
    ...parts,
    question: `What ${result.factors.length === 1 ? 'does' : 'do'} ${listWords(result.factors.map(factorName))} do to the output?`,
    cells: [...shown.filter((cell) => cell !== null), ...standingCells(parts)],
  }
}

function warnings({ line }: Scenario, result: GridResult, words: Period, id: string): CautionCell[] {
  const still = result.points.filter(({ gridlocks }) => gridlocks > 0)
  const edge = edges(result)
  return [
    ...stoppedEarly(id, result, result.points[0]!.units.length, words),
    ...(still.length > 0
      ? [warningCell(`${id}-gridlock`, `Gridlock: the ${words.line} stands still`, stillWords(still, result, words))]
      : []),
    ...listEndsWarning(
      `${id}-products`,
      result.points.map(({ levels, outOfProducts, units }) => ({
        name: settingWords(result.factors, levels),
        line,
        outOfProducts,
        runs: units.length,
      })),
      words,
    ),
    ...(edge.length > 0
      ? [
          warningCell(
            `${id}-edge`,
            'The best lies at the end of what was tried',
            `${edge.map((each) => `- ${markdownOf(each)}`).join('\n')}\n\nBeyond that output may still rise: add levels there.`,
          ),
        ]
      : []),
  ]
}

function stillWords(still: readonly GridPoint[], { factors, points }: GridResult, { one, many }: Period): string {
  const named = still.map(
    ({ levels, gridlocks, units }) => `${markdownOf(settingWords(factors, levels))}: in ${gridlocks} of ${units.length} ${many}`,
  )
  return `${listLines(named, NAMED_MAX, ` of ${points.length} settings`)}\n\nSuch a ${one} counts with what was made before; none of these settings is named as the best.`
}

/** Factors whose best level is the last one tried to either side, where no setting near the best is off that end. */
function edges({ factors, points, best, nearBest }: GridResult): string[] {
  if (best === null) return []
  return factors.flatMap((factor, at) => {
    const last = factor.levels.length - 1
    const level = points[best]!.levels[at]!
    const numbers = factor.levels.map((text) => Number.parseFloat(text))
    if (last < 1 || numbers.some((value) => !Number.isFinite(value))) return []
    const order = [...numbers.keys()].sort((a, b) => numbers[a]! - numbers[b]!)
    if (order[0] !== level && order[last] !== level) return []
    if (nearBest.some((index) => points[index]!.levels[at] !== level)) return []
    return [`${levelWords(factor, level)}: the ${order[0] === level ? 'smallest' : 'greatest'} level tried`]
  })
}
