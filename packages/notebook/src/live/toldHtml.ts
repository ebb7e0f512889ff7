/** What was told of settings, as HTML: the same figures, sentences and tables that pages are written of. */
import { escapeHtml } from '../page/html.ts'
import { tableHtml } from '../page/tableHtml.ts'
import type { LiveKept, ToldSetting } from './liveTold.ts'

/** @param changed  something is set: figures stand beside those of the file */
export function toldHtml(told: ToldSetting, changed: boolean): string {
  const figures = told.figures.map(({ label, value, sure, was, more }) => {
    const differs = changed && (more !== '' || was !== '')
    const before = changed ? `<span class="livewas">file: ${escapeHtml(was === '' ? value : was)}</span>` : ''
    const by = more === '' ? '' : `<span class="livemore">${escapeHtml(more)}</span>`
    return `<div${differs ? ' class="changed"' : ''}><dt>${escapeHtml(label)}</dt><dd><span class="value">${escapeHtml(value)}${differs ? '<span class="hidden">, changed</span>' : ''}</span>${sure === '' ? '' : `<span class="how">${escapeHtml(sure)}</span>`}${before}${by}</dd></div>`
  })
  const warnings = told.warnings.map(
    ({ title, text }) => `<div class="caution warning"><p><strong>${escapeHtml(title)}</strong></p>${paragraphs(text)}</div>`,
  )
  const changes = told.changes.flatMap((list, index) =>
    list.length === 0
      ? []
      : [`<li>${told.changes.length > 1 ? `<strong>${'AB'[index]}</strong> ` : ''}${list.map(escapeHtml).join('; ')}</li>`],
  )
  const parts = [
    `<dl class="figures">${figures.join('')}</dl>`,
    ...(changes.length === 0 ? [] : [`<ul class="livechanges">${changes.join('')}</ul>`]),
    ...warnings,
    ...(changed ? told.sentences.map((sentence) => `<p>${escapeHtml(sentence)}</p>`) : []),
    ...(changed ? [tableHtml(told.table)] : []),
    ...(changed
      ? [`<details><summary>How sure</summary>${told.sure.map((sentence) => `<p>${escapeHtml(sentence)}</p>`).join('')}</details>`]
      : []),
    ...(changed && told.command !== null
      ? [`<p class="how">The same numbers in a terminal: <code>${escapeHtml(told.command)}</code></p>`]
      : []),
  ]
  return parts.join('\n')
}

/** What was kept, to copy and to save. */
export function keptHtml({ words, yaml, fileName, command }: LiveKept): string {
  return `<h3>Keep this as a variation</h3>
<p>${words.map(escapeHtml).join('; ')}</p>
<pre class="liveyaml" tabindex="0">${escapeHtml(yaml)}</pre>
<p class="liveact"><button type="button" data-act="copy">Copy the variation</button><button type="button" data-act="save">Save <span>${escapeHtml(fileName)}</span></button><button type="button" data-act="link">Copy a link to this page as it is set</button></p>
<p class="how">Put it under <code>variations:</code> of the scenario file, or save the file with it beside the old one. Then <code>${escapeHtml(command)}</code> gives the numbers above.</p>`
}

/** Sentences of the command as it prints them: lines and the sign under a place stay where they are. */
export function refusedHtml(text: string): string {
  return `<div class="caution warning"><p><strong>This cannot be simulated</strong></p><pre class="liverefused">${escapeHtml(text)}</pre></div>`
}

/** Lists and paragraphs of a warning; nothing else of Markdown stands in them. */
function paragraphs(text: string): string {
  return text
    .split(/\n{2,}/)
    .map((part) => {
      const lines = part.split('\n')
      if (!lines.every((line) => line.startsWith('- '))) return `<p>${escapeHtml(part)}</p>`
      return `<ul>${lines.map((line) => `<li>${escapeHtml(line.slice(2))}</li>`).join('')}</ul>`
    })
    .join('')
}
