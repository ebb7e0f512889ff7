/** Cells to one self-contained HTML file. Pure: the same cells, head and assets give the same text. */
import { hatchings } from '@loopwright/charts/draw'
import type { PageAssets } from '../assets.ts'
import type { Cell, RunCell, SweepCell } from '../cells/cell.ts'
import { answerHtml, asideHtml, cellHtml, type StillPictures } from './cellHtml.ts'
import { leadFigureHtml, leadNumbersHtml } from './figureHtml.ts'
import { handoutHtml, runningStyle } from './handoutHtml.ts'
import { escapeHtml } from './html.ts'
import { type Layout, layoutOf, type Section } from './layout.ts'
import { markdownWriter } from './markdown.ts'
import { pageData } from './pageData.ts'
import type { PageHead } from './pageHead.ts'

export type { StillPictures } from './cellHtml.ts'

export function pageHtml(head: PageHead, cells: readonly Cell[], assets: PageAssets, stills: StillPictures): string {
  const layout = layoutOf(cells)
  const running = runningStyle(head)
  const csp = `default-src 'none'; script-src '${assets.earlyHash}' '${assets.scriptHash}'; style-src '${assets.styleHash}' '${assets.hash(running)}'; img-src data:;${assets.engine === null ? '' : ' worker-src blob:;'} base-uri 'none'; form-action 'none'`
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
<style>${running}</style>
<script>${assets.early}</script>
</head>
<body>
${hatchings()}
<a class="skip" href="#main">Skip to the answer</a>
<header>
<p class="where">${escapeHtml(head.scenarioName)} · <time datetime="${isoDay(head.date)}">${longDay(head.date)}</time></p>
<h1>${escapeHtml(head.question)}</h1>
</header>
<main id="main">
${mainHtml(layout, stills, handoutHtml(head, cells))}
</main>
<footer>
${footerHtml(head, cells)}
</footer>
<script type="application/octet-stream" id="page-data">${assets.pack(JSON.stringify(pageData(cells)))}</script>
${assets.engine === null ? '' : `<script type="application/octet-stream" id="page-engine">${assets.engine}</script>\n`}<script>${assets.script}</script>
</body>
</html>
`
}

/** The answer with its picture and what goes with it, warnings, contents, what else stands before the first heading, then the sections. */
function mainHtml({ opening, lead, asides, sections }: Layout, stills: StillPictures, handout: string): string {
  const markdown = markdownWriter()
  const html = (cell: Cell): string => (cell === lead ? leadNumbersHtml(lead) : cellHtml(cell, markdown, stills))
  const answer = opening.find((cell) => cell.kind === 'answer')
  const isWarning = (cell: Cell): boolean => cell.kind === 'caution' && cell.tone === 'warning'
  const picture = lead === null ? '' : leadFigureHtml(lead, stills.get(lead.id) ?? null)
  const parts = [
    answer === undefined ? '' : answerHtml(answer, { picture, asides: asides.map((aside) => asideHtml(aside, markdown)).join('\n') }),
    ...opening.filter(isWarning).map(html),
    handout,
    contentsHtml(sections),
    ...opening.filter((cell) => cell !== answer && !isWarning(cell)).map(html),
    ...sections.map((section) => sectionHtml(section, html)),
  ]
  return parts.filter((part) => part !== '').join('\n')
}

/** Links to the sections; one or none needs no list. */
function contentsHtml(sections: readonly Section[]): string {
  if (sections.length < 2) return ''
  const links = sections.map(({ id, title }) => `<li><a href="#${id}">${escapeHtml(title)}</a></li>`)
  return `<nav class="contents" aria-label="Contents"><ul>${links.join('')}</ul></nav>`
}

/** A folded section shows its heading and one line; what it holds is there all the same. */
function sectionHtml({ id, title, folded, cells }: Section, html: (cell: Cell) => string): string {
  const [first, ...rest] = cells.map(html)
  const heading = first!.replace('</h2>', `<a class="here" href="#${id}" aria-label="Link to “${escapeHtml(title)}”">#</a></h2>`)
  const held = rest.filter((part) => part !== '').join('\n')
  const inner =
    folded === null
      ? `${heading}\n${held}`
      : `${heading}\n<details class="fold"><summary>${escapeHtml(folded)}</summary>\n${held}\n</details>`
  return `<section class="part" aria-label="${escapeHtml(title)}" data-part="${id}">\n${inner}\n</section>`
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
