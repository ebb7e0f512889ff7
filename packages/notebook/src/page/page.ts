/** Cells to one self-contained HTML file. Pure: the same cells, head and assets give the same text. */
import { hatchings } from '@loopwright/charts'
import type { PageAssets } from '../assets.ts'
import type { AnswerCell, CautionCell, Cell, ChoiceCell, RunCell, SureCell, SweepCell, TableCell } from '../cells/cell.ts'
import { shownView } from '../cells/cell.ts'
import { figureHtml } from './figureHtml.ts'
import { escapeHtml } from './html.ts'
import { type MarkdownWriter, markdownWriter } from './markdown.ts'
import { pageData } from './pageData.ts'
import { tableHtml } from './tableHtml.ts'

export interface PageHead {
  /** the question: the page's heading */
  readonly question: string
  readonly scenarioName: string
  readonly date: Date
  /** repeats what made the page */
  readonly command: string
}

/** Pictures for readers without scripts, as SVG text by cell id. */
export type StillPictures = ReadonlyMap<string, string>

export function pageHtml(head: PageHead, cells: readonly Cell[], assets: PageAssets, stills: StillPictures): string {
  const markdown = markdownWriter()
  const body = cells.map((cell) => cellHtml(cell, markdown, stills)).filter((html) => html !== '')
  const csp = `default-src 'none'; script-src '${assets.scriptHash}'; style-src '${assets.styleHash}'; img-src data:; base-uri 'none'; form-action 'none'`
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${csp}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="generator" content="loopwright">
<title>${escapeHtml(head.question)}</title>
<style>${assets.style}</style>
</head>
<body>
${hatchings()}
<a class="skip" href="#main">Skip to the answer</a>
<header>
<p class="where">${escapeHtml(head.scenarioName)} · <time datetime="${isoDay(head.date)}">${longDay(head.date)}</time></p>
<h1>${escapeHtml(head.question)}</h1>
</header>
<main id="main">
${body.join('\n')}
</main>
<footer>
${footerHtml(head, cells)}
</footer>
<script type="application/octet-stream" id="page-data">${assets.pack(JSON.stringify(pageData(cells)))}</script>
<script>${assets.script}</script>
</body>
</html>
`
}

function cellHtml(cell: Cell, markdown: MarkdownWriter, stills: StillPictures): string {
  switch (cell.kind) {
    case 'prose':
      return `<div class="prose" id="${cell.id}">\n${markdown.write(cell.markdown)}</div>`
    case 'answer':
      return answerHtml(cell)
    case 'sure':
      return sureHtml(cell)
    case 'table':
      return tableCellHtml(cell)
    case 'chart':
    case 'plan':
      return figureHtml(cell, markdown.level() + 1, stills.get(cell.id) ?? null)
    case 'choice':
      return choiceHtml(cell)
    case 'caution':
      return cautionHtml(cell, markdown)
    case 'run':
    case 'sweep':
    case 'data':
      return ''
  }
}

function answerHtml(cell: AnswerCell): string {
  const sentences = cell.sentences.map((sentence, index) => `<p${index === 0 ? ' class="first"' : ''}>${sentenceHtml(sentence)}</p>`)
  return `<section class="answer" id="${cell.id}" aria-label="Answer">\n${sentences.join('\n')}\n</section>`
}

function sureHtml({ id, sentences }: SureCell): string {
  if (sentences.length === 0) return ''
  const said = sentences.map((sentence) => `<p class="sure">${sentenceHtml(sentence)}</p>`)
  return `<section class="howsure" id="${id}" aria-label="How sure">\n${said.join('\n')}\n</section>`
}

/** Plain text, but for what is typed, between backquotes. */
function sentenceHtml(sentence: string): string {
  return escapeHtml(sentence).replace(/`([^`]+)`/g, '<code>$1</code>')
}

function tableCellHtml(cell: TableCell): string {
  return `<div class="tablecell" id="${cell.id}">${tableHtml(shownView(cell.views))}</div>`
}

/** Nothing where there is nothing to choose. */
function choiceHtml(cell: ChoiceCell): string {
  if (cell.options.length < 2) return ''
  const options = cell.options.map((option) => {
    const checked = option.key === cell.shown ? ' checked' : ''
    const [name, value] = [escapeHtml(cell.id), escapeHtml(option.key)]
    return `<label><input type="radio" name="${name}" value="${value}"${checked}><span>${escapeHtml(option.label)}</span></label>`
  })
  return `<fieldset class="choice" id="${cell.id}" data-choice="${cell.id}"><legend>${escapeHtml(cell.legend)}</legend><div class="options">
${options.join('\n')}
</div><p class="hidden" role="status"></p></fieldset>`
}

function cautionHtml(cell: CautionCell, markdown: MarkdownWriter): string {
  const level = Math.min(markdown.level() + 1, 3)
  const heading = `<h${level}>${escapeHtml(cell.title)}</h${level}>`
  return `<section class="caution ${cell.tone}" id="${cell.id}" aria-label="${escapeHtml(cell.title)}">\n${heading}\n${markdown.write(cell.markdown)}</section>`
}

function footerHtml(head: PageHead, cells: readonly Cell[]): string {
  const sources = cells.filter((cell) => cell.kind === 'run' || cell.kind === 'sweep')
  const found = sources.flatMap(provenanceLines)
  // what several studies have in common is said once
  const lines = [...new Map(found.map((line) => [line.join(), line])).values()]
  lines.push(['Repeat with', `<code>${escapeHtml(head.command)}</code>`])
  return `<dl>\n${lines.map(([term, text]) => `<dt>${term}</dt><dd>${text}</dd>`).join('\n')}\n</dl>`
}

function provenanceLines({ sentence, provenance: source }: RunCell | SweepCell): [string, string][] {
  const stopped = source.partial ? ' Stopped before all were done.' : ''
  return [
    ['Simulated', `${escapeHtml(sentence)}${stopped}`],
    ['Seed', `<code>${escapeHtml(source.seed)}</code>`],
    ['Scenario', `<code>${escapeHtml(source.scenarioFile)}</code>, hash <code>${escapeHtml(source.scenarioHash)}</code>`],
    ['Version', `loopwright ${escapeHtml(source.engineVersion)}`],
  ]
}

function isoDay(date: Date): string {
  return date.toISOString().slice(0, 10)
}

function longDay(date: Date): string {
  const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December']
  return `${date.getUTCDate()} ${months[date.getUTCMonth()]} ${date.getUTCFullYear()}`
}
