/** One cell as HTML. */
import type { AnswerCell, CautionCell, Cell, ChoiceCell, FaultCell, ProseCell, SureCell, TableCell } from '../cells/cell.ts'
import { shownView } from '../cells/cell.ts'
import { figureHtml } from './figureHtml.ts'
import { escapeHtml } from './html.ts'
import { withUnits } from './withUnits.ts'
import { liveHtml } from '../live/liveHtml.ts'
import type { MarkdownWriter } from './markdown.ts'
import { answerSavesHtml } from './savesHtml.ts'
import { tableHtml } from './tableHtml.ts'

/** Pictures for readers without scripts, as SVG text by cell id. */
export type StillPictures = ReadonlyMap<string, string>

export function cellHtml(cell: Cell, markdown: MarkdownWriter, stills: StillPictures): string {
  switch (cell.kind) {
    case 'prose':
      return `<div class="prose" id="${cell.id}">\n${markdown.write(cell.markdown)}</div>`
    case 'answer':
      return answerHtml(cell, { landmark: false })
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
    case 'fault':
      return faultHtml(cell)
    case 'live':
      return liveHtml(cell)
    case 'run':
    case 'sweep':
    case 'data':
      return ''
  }
}

interface AnswerParts {
  readonly picture?: string
  readonly asides?: string
  readonly landmark?: boolean
}

/**
 * The figures, the first sentence, the picture that proves it beside them where there is room, what goes with the answer, then the other sentences.
 *
 * @param picture   HTML. Default: none
 * @param asides    HTML. Default: none
 * @param landmark  the page's own answer; of several studies the others are groups, as landmarks have names of their own. Default: true
 */
export function answerHtml(
  { id, sentences, figures = [] }: AnswerCell,
  { picture = '', asides = '', landmark = true }: AnswerParts = {},
): string {
  const [first, ...more] = sentences.map(sentenceHtml)
  const large = figures.map(
    ({ label, value, sure }) =>
      `<div><dt>${escapeHtml(label)}</dt><dd><span class="value${sizeOf(value)}">${escapeHtml(value)}</span>${sure === '' ? '' : `<span class="how">${escapeHtml(sure)}</span>`}</dd></div>`,
  )
  const parts = [
    ...(large.length === 0 ? [] : [`<dl class="figures">${large.join('')}</dl>`]),
    `<div class="said"><p class="first">${first}</p>${answerSavesHtml()}</div>`,
    ...(picture === '' ? [] : [picture]),
    ...(asides === '' ? [] : [`<div class="asides">${asides}</div>`]),
    ...(more.length === 0 ? [] : [`<div class="more">${more.map((sentence) => `<p>${sentence}</p>`).join('\n')}</div>`]),
  ]
  return `<section class="answer${picture === '' ? ' alone' : ''}" id="${id}"${landmark ? '' : ' role="group"'} aria-label="Answer">\n${parts.join('\n')}\n</section>`
}

/** letters of a value that is set in the largest size, and in the next */
const [SHORT_VALUE, LONG_VALUE] = [6, 12]

const sizeOf = ({ length }: string): string => (length > LONG_VALUE ? ' words' : length > SHORT_VALUE ? ' long' : '')

/** Prose under a title of its own, with the answer. */
export function asideHtml({ id, aside = '', markdown: text }: ProseCell, markdown: MarkdownWriter): string {
  return `<section id="${id}" aria-label="${escapeHtml(aside)}"><h2 class="aside">${escapeHtml(aside)}</h2>\n${markdown.write(text)}</section>`
}

function sureHtml({ id, sentences }: SureCell): string {
  if (sentences.length === 0) return ''
  const said = sentences.map((sentence) => `<p class="sure">${sentenceHtml(sentence)}</p>`)
  // a group, no landmark: a page of several studies has several
  return `<div class="howsure" role="group" id="${id}" aria-label="How sure">\n${said.join('\n')}\n</div>`
}

/** Plain text, but for what is typed, between backquotes. */
function sentenceHtml(sentence: string): string {
  return escapeHtml(withUnits(sentence)).replace(/`([^`]+)`/g, '<code>$1</code>')
}

function tableCellHtml(cell: TableCell): string {
  return `<div class="tablecell" id="${cell.id}">${tableHtml(shownView(cell.views))}</div>`
}

/** Nothing where there is nothing to choose. */
function choiceHtml(cell: ChoiceCell): string {
  if (cell.options.length < 2) return ''
  const options = cell.options.map((option) => {
    const own = option.key === cell.shown
    const [name, value] = [escapeHtml(cell.id), escapeHtml(option.key)]
    return `<label${own ? ' class="answered"' : ''}><input type="radio" name="${name}" value="${value}"${own ? ' checked' : ''}><span>${escapeHtml(option.label)}${own ? '<span class="hidden">, the answer</span>' : ''}</span></label>`
  })
  return `<fieldset class="choice" id="${cell.id}" data-choice="${cell.id}"><legend>${escapeHtml(cell.legend)}</legend><div class="options">
${options.join('\n')}
</div><p class="hidden" role="status"></p></fieldset>`
}

/** Where a part of a notebook failed, in its place. */
function faultHtml({ id, place, message, frame, fix, waiting }: FaultCell): string {
  const title = `${place} ${waiting ? 'waits' : 'failed'}`
  const lines = (text: string): string[] => (text === '' ? [] : text.split('\n').map((each) => `<p>${escapeHtml(each)}</p>`))
  const parts = [
    `<p class="finding">${escapeHtml(title)}</p>`,
    ...lines(message),
    ...(frame === '' ? [] : [`<pre><code>${escapeHtml(frame)}</code></pre>`]),
    ...lines(fix),
  ]
  return `<section class="caution warning fault" id="${id}" aria-label="${escapeHtml(title)}">\n${parts.join('\n')}\n</section>`
}

function cautionHtml(cell: CautionCell, markdown: MarkdownWriter): string {
  const level = Math.min(markdown.level() + 1, 3)
  const heading = `<h${level}>${escapeHtml(cell.title)}</h${level}>`
  return `<section class="caution ${cell.tone}" id="${cell.id}" role="group" aria-label="${escapeHtml(cell.title)}">\n${heading}\n${markdown.write(cell.markdown)}</section>`
}
