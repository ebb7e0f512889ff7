/** What a printed first page needs to be handed out alone: what the answer rests on in a few lines, and the cautions in brief. On a screen it is not shown. */
import type { Cell } from '../cells/cell.ts'
import { escapeHtml } from './html.ts'
import type { PageHead } from './pageHead.ts'

/** @returns  HTML; '': the cells have nothing to say of it */
export function handoutHtml(head: Pick<PageHead, 'command'>, cells: readonly Cell[]): string {
  const inputs = cells.flatMap((cell) => (cell.kind === 'prose' && cell.folded !== undefined ? [cell.folded] : []))
  const [start] = cells.flatMap((cell) => (cell.kind === 'sure' ? cell.sentences.slice(-1) : []))
  const runs = cells.filter((cell) => cell.kind === 'run' || cell.kind === 'sweep')
  const [first] = runs
  const cautions = cells.flatMap((cell) => (cell.kind === 'caution' && cell.brief !== undefined ? [cell.brief] : []))
  if (first === undefined && cautions.length === 0) return ''
  const lines = [
    ...inputs.slice(0, 1),
    ...(start === undefined ? [] : [start]),
    ...(first === undefined
      ? []
      : [
          first.sentence,
          `${first.provenance.scenarioFile}, hash ${first.provenance.scenarioHash}, loopwright ${first.provenance.engineVersion}`,
        ]),
    `Repeat with ${head.command}`,
  ]
  const list = (title: string, items: readonly string[]): string =>
    items.length === 0
      ? ''
      : `<section><h2 class="aside">${title}</h2><ul>${items.map((item) => `<li>${escapeHtml(item.replaceAll('`', ''))}</li>`).join('')}</ul></section>`
  return `<div class="handout" aria-hidden="true">${list('What it rests on', lines)}${list('Cautions', cautions)}</div>`
}

/** The running title of a printed page, as a style of its own: the question at the head of each sheet but the first. */
export function runningStyle({ question }: Pick<PageHead, 'question'>): string {
  const text = question.replace(/[^\p{L}\p{N} .,:;?!()–’-]/gu, (sign) => `\\${sign.codePointAt(0)!.toString(16)} `)
  return `@media print{@page{@top-left{content:"${text}";font:9pt sans-serif;color:#404045}}@page :first{@top-left{content:none}}}`
}
