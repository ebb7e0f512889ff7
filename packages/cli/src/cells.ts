/** Results as cells, shown in the terminal and written as a page: the same cells that a notebook is made of. */
import { type Cell, carrierSweepCells, carrierSweepStory, terminalText, writePage } from '@loopwright/notebook'
import type { CarrierStudy, SweepResult } from '@loopwright/study'
import type { Loaded } from './loadScenario.ts'
import type { Shell } from './shell.ts'

/** What a command shows: in the terminal the answer and its table, on the page all cells. */
export interface Shown {
  readonly terminal: readonly Cell[]
  readonly page: readonly Cell[]
}

export function sweepCells({ file, scenario }: Loaded, result: SweepResult | CarrierStudy): Shown {
  const story = carrierSweepStory(scenario, result, { scenarioFile: file })
  const sure: Cell = { kind: 'prose', id: 'sure', markdown: story.answer.sure.join('\n\n') }
  return {
    terminal: [story.answer, story.table, sure, ...story.warnings],
    page: carrierSweepCells(scenario, result, { scenarioFile: file }),
  }
}

/** Prints cells, a blank line between two. */
export function showCells(shell: Shell, cells: readonly Cell[]): void {
  const texts = cells.map((cell) => terminalText(cell, { colour: shell.out.colour })).filter((text) => text !== '')
  shell.out.write(`${texts.join('\n\n')}\n`)
}

/** Writes the page of the cells. Its heading is the question; unless given, that of the scenario. */
export async function writeCells(
  shell: Shell,
  out: string,
  { scenario }: Loaded,
  cells: readonly Cell[],
  { command, question = scenario.question }: { readonly command: string; readonly question?: string | undefined },
): Promise<void> {
  const head = { question, scenarioName: scenario.name, date: shell.today(), command }
  await shell.writeFile(out, await writePage(head, cells))
}
