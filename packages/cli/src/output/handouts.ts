/** What is handed out beside the page: its figures as files, a PDF, four slides. */
import { join } from 'node:path'
import type { Cell } from '@loopwright/notebook'
import { Failure, type Shell } from '../shell/shell.ts'

export interface HandoutFlags {
  /** folder for figures as SVG */
  readonly svg?: string
  /** folder for figures as PNG */
  readonly png?: string
  /** file for the page as PDF */
  readonly pdf?: string
  /** file for four slides */
  readonly pptx?: string
}

export interface Handout {
  readonly question: string
  readonly scenarioName: string
  readonly cells: readonly Cell[]
  readonly page: () => Promise<string>
}

/** True where anything is to be handed out. */
export const wantsHandouts = ({ svg, png, pdf, pptx }: HandoutFlags): boolean => [svg, png, pdf, pptx].some((each) => each !== undefined)

/**
 * Tries before a study is run whether what it hands out can be written.
 *
 * @throws Misuse, Failure  as `Shell.checkWritable`; where a PDF is asked for and nothing here prints
 */
export async function checkHandouts(shell: Shell, { svg, png, pdf, pptx }: HandoutFlags): Promise<void> {
  if (svg !== undefined) await shell.checkWritable(join(svg, 'figure.svg'))
  if (png !== undefined) await shell.checkWritable(join(png, 'figure.png'))
  for (const file of [pdf, pptx]) if (file !== undefined) await shell.checkWritable(file)
  if (pdf !== undefined && shell.cannotPrint() !== null) throw new Failure(`--pdf: ${shell.cannotPrint()}`)
}

/** Writes all that was asked for, and says so on standard error. */
export async function writeHandouts(
  shell: Shell,
  { svg, png, pdf, pptx }: HandoutFlags,
  { question, scenarioName, cells, page }: Handout,
): Promise<void> {
  const { figureSvgs, pngOf, slidesOf } = await import('@loopwright/notebook/machine')
  const told: string[] = []
  const figures = svg === undefined && png === undefined ? [] : await figureSvgs(cells)
  const count = figures.length === 1 ? '1 figure' : `${figures.length} figures`
  if (svg !== undefined) {
    for (const figure of figures) await shell.writeFile(join(svg, `${figure.id}.svg`), figure.svg)
    told.push(`${count} in ${svg}`)
  }
  if (png !== undefined) {
    for (const figure of figures) await shell.writeFile(join(png, `${figure.id}.png`), await pngOf(figure.svg))
    told.push(`${count} in ${png}`)
  }
  if (pdf !== undefined) {
    await shell.writeFile(pdf, await shell.printPdf(await page()))
    told.push(`PDF: ${pdf}`)
  }
  if (pptx !== undefined) {
    await shell.writeFile(pptx, await slidesOf({ question, scenarioName, date: shell.today() }, cells))
    told.push(`slides: ${pptx}`)
  }
  shell.err.write(`${told.join('\n')}\n`)
}
