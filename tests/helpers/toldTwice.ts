/** Whether the terminal and the page tell the same: what the tests of every story ask. */
import type { Cell } from '../../packages/notebook/src/cells/cell.ts'
import { pageHtml } from '../../packages/notebook/src/page/page.ts'
import { printer } from '../../packages/notebook/src/terminal/printer.ts'

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
export function toldOnce(terminal: string, page: readonly string[]): ToldOnce {
  const [inTerminal, onPage] = [flat(terminal), flat(page.join(' '))]
  return {
    inTerminalOnly: terminalPieces(terminal).filter((piece) => !onPage.includes(piece)),
    onPageOnly: page.flatMap(sentencesOf).filter((piece) => !inTerminal.includes(piece)),
  }
}

/** a terminal that has room for every column of every table */
const WIDE = 1000

export function terminalOf(cells: readonly Cell[]): string {
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
export function pageOf(cells: readonly Cell[]): string[] {
  const head = { question: '', scenarioName: '', date: new Date(0), command: '' }
  const assets = {
    script: '',
    scriptHash: '',
    early: '',
    earlyHash: '',
    style: '',
    styleHash: '',
    engine: null,
    hash: () => '',
    pack: () => '',
  }
  const html = pageHtml(head, cells.filter(isForBoth), assets, new Map())
  const main = html
    .slice(html.indexOf('<main id="main">') + '<main id="main">'.length, html.indexOf('</main>'))
    // what stands with the answer and the picture beside it are read after it, as in a terminal
    .replace(/(<div class="asides">[\s\S]*?<\/div>)([\s\S]*)/, '$2$1')
    .replace(/(<section class="answer"[\s\S]*?)(<figure[\s\S]*?<\/figure>)([\s\S]*?<\/section>)/, '$1$3$2')
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
  /<p class="saves">[\s\S]*?<\/p>/g,
  /<svg[\s\S]*?<\/svg>/g,
  /<dl class="figures">[\s\S]*?<\/dl>/g,
  /<div class="handout"[\s\S]*?<\/div>/g,
  /<h2 class="aside">[\s\S]*?<\/h2>/g,
  /<a class="here"[\s\S]*?<\/a>/g,
  /<nav[\s\S]*?<\/nav>/g,
  /<noscript>[\s\S]*?<\/noscript>/g,
  /<fieldset[\s\S]*?<\/fieldset>/g,
]

const without = (html: string, parts: readonly RegExp[]): string => parts.reduce((left, part) => left.replace(part, ''), html)

function isForBoth(cell: Cell): boolean {
  if (cell.kind === 'caution') return cell.tone === 'warning'
  return !('pageOnly' in cell && cell.pageOnly === true) && cell.kind !== 'plan' && cell.kind !== 'live'
}

const plain = (html: string): string =>
  html.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&#39;', "'").replaceAll('&amp;', '&')

/** thin blanks stay: only where lines break is free */
const flat = (text: string): string => text.replace(/[ \u00a0\n\t]+/g, ' ').trim()

const sentencesOf = (text: string): string[] =>
  flat(text)
    .split(/(?<=[.:;!?]) (?=\p{Lu}|“)/u)
    .filter((sentence) => sentence !== '')
