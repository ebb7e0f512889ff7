import type { Cell } from '@loopwright/notebook'
import { lineFacts, workingSeconds } from '@loopwright/study'
import { loadScenario } from '../loadScenario.ts'
import { DONE, refusals, type Shell } from '../shell.ts'
import {
  breaksSentence,
  carriersSentence,
  lawSentences,
  loopSentence,
  stationsTable,
  stopsTable,
  taktSentence,
  variantsTable,
  variationsSentence,
  windowSentence,
  zoneNamesSentence,
} from '../words/checkWords.ts'
import { windowWords } from '../words/runWords.ts'

/** Says in plain words what was understood of a scenario; runs nothing. */
export async function check(shell: Shell, file: string, flags: { readonly variation?: string }): Promise<number> {
  const { scenario, problems, notes } = await loadScenario(shell, file, flags.variation)
  const facts = refusals(() => lineFacts(scenario.line))
  const { generalInputs, oneView } = await import('@loopwright/notebook')
  const general = generalInputs(scenario.line)
  const { showCells } = await import('../cells.ts')
  const warnings =
    problems.length === 0
      ? 'no errors, no warnings'
      : `no errors, ${problems.length === 1 ? '1 warning' : `${problems.length} warnings`} (see above)`
  const words = [
    loopSentence(scenario, facts),
    zoneNamesSentence(notes),
    carriersSentence(scenario),
    windowSentence(scenario),
    breaksSentence(scenario),
    variationsSentence(notes),
  ]
  const lawSeconds = (facts.law?.unitsPerLap ?? 1) * workingSeconds(scenario.line)
  const law = [taktSentence(scenario, facts), ...lawSentences(scenario, facts, windowWords(scenario), lawSeconds)]
  const prose = (id: string, sentences: readonly (string | null)[]): Cell => ({
    kind: 'prose',
    id,
    markdown: sentences.filter((one) => one !== null).join('\n\n'),
  })
  const table = (id: string, views: ReturnType<typeof stationsTable>): Cell => ({
    kind: 'table',
    id,
    where: 'both',
    views: oneView(views),
  })
  showCells(shell, [
    prose('file', [`${file}: ${warnings}.`, `${scenario.name}. ${scenario.question}`]),
    prose('words', words),
    table('stations', stationsTable(facts)),
    prose('law', law),
    ...(general === null ? [] : [table('general', general)]),
    ...(facts.stops.length > 0 ? [table('stops', stopsTable(facts))] : []),
    ...(facts.variants.length > 1 ? [table('variants', variantsTable(facts))] : []),
  ])
  return DONE
}
