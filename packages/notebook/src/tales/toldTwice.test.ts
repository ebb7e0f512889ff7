/** Whether the terminal and the page tell the same: what the tests of every story ask. */
import { tableOf, wordColumn } from '@loopwright/charts'
import { expect, test } from 'vitest'
import type { Cell } from '../cells/cell.ts'
import { oneView, proseCell, tableCell, warningCell } from '../cells/cell.ts'
import type { Figure } from '../cells/figure.ts'
import { pageHtml } from '../page/page.ts'
import { printer } from '../terminal/printer.ts'

/** Texts that one of the two has and the other has not. */
export interface ToldOnce {
  readonly inTerminalOnly: readonly string[]
  readonly onPageOnly: readonly string[]
}

/** What `toldTwice` gives where both tell the same. */
export const TOLD_TWICE: ToldOnce = { inTerminalOnly: [], onPageOnly: [] }

/**
 * Sentences, heads and table cells that stand in the terminal and not on the page, or on the page and not in the terminal.
 * What is made for the page alone is left out of it: cells marked so, controls, cautions that always stand, pictures with the line on
 * how to read them, tables that are not open.
 */
export function toldTwice(cells: readonly Cell[]): ToldOnce {
  return toldOnce(terminalOf(cells), pageOf(cells))
}

/** @param page  text of each element */
function toldOnce(terminal: string, page: readonly string[]): ToldOnce {
  const [inTerminal, onPage] = [flat(terminal), flat(page.join(' '))]
  return {
    inTerminalOnly: terminalPieces(terminal).filter((piece) => !onPage.includes(piece)),
    onPageOnly: page.flatMap(sentencesOf).filter((piece) => !inTerminal.includes(piece)),
  }
}

/** a terminal that has room for every column of every table */
const WIDE = 1000

function terminalOf(cells: readonly Cell[]): string {
  const said: string[] = []
  const { print, end } = printer((text) => said.push(text), { columns: WIDE })
  for (const cell of cells) print(cell)
  end()
  return said.join('\n')
}

/** Lines of a table fall into their columns; other lines run on to sentences. */
function terminalPieces(text: string): string[] {
  const pieces: string[] = []
  let running: string[] = []
  const close = (): void => {
    pieces.push(...sentencesOf(running.join(' ')))
    running = []
  }
  for (const line of text.split('\n')) {
    const isTable = /^[ >] /.test(line)
    if (isTable || line.trim() === '' || line.startsWith('- ')) close()
    if (isTable) pieces.push(...line.slice(2).split(/ {2,}/).map(flat))
    else if (line.trim() !== '') running.push(line.replace(/^- /, ''))
    // a warning's title stands on a line of its own
    if (!isTable && line.endsWith(':')) close()
  }
  close()
  return pieces.map((piece) => piece.replace(/:$/, '')).filter((piece) => piece !== '')
}

/** Text of each element of the page's main part. */
function pageOf(cells: readonly Cell[]): string[] {
  const head = { question: '', scenarioName: '', date: new Date(0), command: '' }
  const assets = { script: '', scriptHash: '', style: '', styleHash: '', pack: () => '' }
  const html = pageHtml(head, cells.filter(isForBoth), assets, new Map())
  const main = html.slice(html.indexOf('<main id="main">') + '<main id="main">'.length, html.indexOf('</main>'))
  const simulated = [...html.matchAll(/<dt>Simulated<\/dt><dd>([^<]*)<\/dd>/g)].map(([, what]) =>
    what!.endsWith('.') ? what! : `${what!}.`,
  )
  // a word that the terminal breaks by its hyphen is whole on the page
  return [
    ...without(main, OF_THE_PAGE)
      .replaceAll('&shy;', '-<br>')
      .split(/<(?!\/?(?:code|em|strong|a)\b)[^>]*>/),
    ...simulated,
  ]
    .map((text) => flat(plain(text.replace(/<[^>]*>/g, ''))))
    .filter((text) => text !== '')
}

const OF_THE_PAGE: readonly RegExp[] = [
  /<details>[\s\S]*?<\/details>/g,
  /<summary>[\s\S]*?<\/summary>/g,
  /<p class="how">[\s\S]*?<\/p>/g,
  /<div class="picture[\s\S]*?<\/div>/g,
  /<noscript>[\s\S]*?<\/noscript>/g,
  /<fieldset[\s\S]*?<\/fieldset>/g,
]

const without = (html: string, parts: readonly RegExp[]): string => parts.reduce((left, part) => left.replace(part, ''), html)

function isForBoth(cell: Cell): boolean {
  if (cell.kind === 'caution') return cell.tone === 'warning'
  return !('pageOnly' in cell && cell.pageOnly === true) && cell.kind !== 'plan'
}

const plain = (html: string): string =>
  html.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&#39;', "'").replaceAll('&amp;', '&')

/** thin blanks stay: only where lines break is free */
const flat = (text: string): string => text.replace(/[ \n\t]+/g, ' ').trim()

const sentencesOf = (text: string): string[] =>
  flat(text)
    .split(/(?<=[.:;!?]) (?=\p{Lu}|“)/u)
    .filter((sentence) => sentence !== '')

const table = tableOf<readonly [string, string]>({
  caption: 'Lines',
  columns: [wordColumn('Line', 'line', 'name', ([name]) => name), { head: 'Units a\nshift', text: ([, units]) => units, data: [] }],
  rows: [['today & now', '330 ± 1']],
  note: 'Means with 95 % intervals.',
})
const cells: readonly Cell[] = [
  { kind: 'answer', id: 'a', sentences: ['Put S5 at Z14: that makes 7.8 more. Nothing else does.'] },
  warningCell('w', 'Stopped early', 'Some are in.\n- “today” & others'),
  proseCell('p', 'Prose with `loopwright run` in it.'),
  tableCell('t', table),
  { kind: 'sure', id: 's', sentences: ['More replications narrow it.'] },
]

const figure: Figure = {
  finding: 'Breaks cost most.',
  picture: { kind: 'chart', spec: {}, rows: [], swapRows: false },
  alt: 'Bars.',
  howToRead: 'Read it.',
  table,
  tableOpen: true,
}
const chart: Cell = { kind: 'chart', id: 'x', views: oneView(figure) }

test('the same cells are told twice', () => expect(toldTwice([...cells, chart])).toEqual(TOLD_TWICE))

test('what is made for the page alone is not missed in the terminal', () => {
  const caution: Cell = { kind: 'caution', id: 'c', tone: 'caution', title: 'Use', markdown: 'Local codes decide.' }
  const closed: Cell = { kind: 'chart', id: 'y', views: oneView({ ...figure, tableOpen: false }) }
  expect(toldTwice([{ ...proseCell('p', 'For the page.'), pageOnly: true }, caution, closed])).toEqual(TOLD_TWICE)
})

test('a sentence, a head or a number that one of them tells alone is found', () => {
  const [terminal, page] = [terminalOf(cells), pageOf(cells)]
  expect(toldOnce(terminal.replace('330 ± 1', '330 ± 2'), page)).toEqual({ inTerminalOnly: ['330 ± 2'], onPageOnly: ['330 ± 1'] })
  expect(toldOnce(`${terminal}\n\nIt is so. And more.`, [...page, 'It is so. But less.'])).toEqual({
    inTerminalOnly: ['And more.'],
    onPageOnly: ['But less.'],
  })
  expect(toldOnce(terminal, [...page, 'At most'])).toEqual({ inTerminalOnly: [], onPageOnly: ['At most'] })
  expect(
    toldOnce(
      terminal,
      page.filter((text) => text !== 'Stopped early'),
    ).inTerminalOnly,
  ).toEqual(['Stopped early'])
})
