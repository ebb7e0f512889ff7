/** The charts of growth as a page, and each as a picture of its own. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { drawingSvg } from '@loopwright/charts/draw'
import { type Cell, oneView, writePage } from '@loopwright/notebook'
import type { BenchDocument } from './document.ts'
import { growthFigures } from './growth.ts'

/** pixels */
const WIDTH = 760

/**
 * Writes `growth.html`, `growth-zones.svg` and `growth-carriers.svg`.
 *
 * @param folder  made where it is missing
 * @returns       the tables, as Markdown
 */
export async function writeGrowth(told: BenchDocument, folder: string, date: Date): Promise<string> {
  const figures = Object.entries(growthFigures(told))
  mkdirSync(folder, { recursive: true })
  for (const [name, { drawing }] of figures)
    writeFileSync(join(folder, `growth-${name}.svg`), `${drawingSvg(drawing, { widthPixels: WIDTH, look: 'light' })}\n`)
  const cells = figures.map(([name, { finding, drawing, alt, readLine, table }]): Cell => {
    const picture = { kind: 'drawing', drawing } as const
    return { kind: 'chart', id: `growth-${name}`, views: oneView({ finding, picture, alt, howToRead: readLine, table, tableOpen: true }) }
  })
  const head = { question: 'How does the cost of an event grow?', scenarioName: 'benchmarks', date, command: 'npm run bench -- --growth' }
  writeFileSync(join(folder, 'growth.html'), await writePage(head, cells))
  return figures.map(([, { table, finding }]) => `${finding}\n\n${markdown(table)}`).join('\n\n')
}

function markdown({ columns, rows }: ReturnType<typeof growthFigures>['zones']['table']): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`
  return [line(columns.map(({ head }) => head)), line(columns.map(() => '--:')), ...rows.map(({ cells }) => line(cells))].join('\n')
}
