/** What the reader of a page may change, as HTML; the page's script brings it to life, and without one it is not seen. */
import type { LiveCell } from '../cells/cell.ts'
import { escapeHtml } from '../page/html.ts'
import { replayHtml } from '../replay/replayHtml.ts'
import { LIVE_GROUPS, type LiveInput } from './liveInput.ts'

/** groups that stand open */
const OPEN = new Set(['Of this notebook', 'Line'])

export function liveHtml({ id, inputs }: LiveCell): string {
  const groups = LIVE_GROUPS.flatMap((group) => {
    const own = inputs.filter((input) => input.group === group)
    if (own.length === 0) return []
    const rows = own.map((input) => inputHtml(id, input)).join('\n')
    return [
      `<details class="livegroup"${OPEN.has(group) ? ' open' : ''}><summary>${group}<span class="livecount"></span></summary>${group === 'Stations' ? '<div class="livezones"></div>' : ''}\n${rows}\n</details>`,
    ]
  })
  return `<div class="live" id="${id}" role="group" aria-label="What if?">
<p class="how">Change a value: this page simulates the line again, over the same random shifts. Nothing leaves this file. What goes on telling the line as it is written says so.</p>
<div class="livesides">
<div class="livein">
${groups.join('\n')}
${ownPathHtml(id)}
</div>
<div class="liveout"><p class="livestate" role="status"></p>
<p class="liveact"><button type="button" data-act="back" disabled>Back to the file <kbd>Esc</kbd></button><button type="button" data-act="aside" disabled>Set beside as A</button><button type="button" data-act="keep" disabled>Keep this …</button></p>
<div class="livetold"></div>
<div class="livekept" hidden></div>
</div>
</div>
</div>
<h3 id="watch">Watch one run</h3>
${replayHtml()}`
}

function inputHtml(id: string, { key, label, file, shown }: LiveInput): string {
  const own = escapeHtml(`${id}-${key}`)
  const value = escapeHtml(file)
  const control =
    shown.kind === 'choice'
      ? `<select id="${own}">${shown.options.map((option) => `<option value="${escapeHtml(option.value)}"${option.value === file ? ' selected' : ''}>${escapeHtml(option.label)}</option>`).join('')}</select>`
      : `<input type="range" min="${shown.from}" max="${shown.to}" step="${shown.step}" value="${Number.parseFloat(file)}" aria-label="${escapeHtml(label)}, slider" aria-valuetext="${value}"><input type="text" id="${own}" value="${value}" autocomplete="off" spellcheck="false">`
  return `<div class="liverow" data-key="${escapeHtml(key)}"><label for="${own}">${escapeHtml(label)}</label><span class="livefield live${shown.kind}">${control}</span><span class="livewas">file: ${value}</span></div>`
}

/** Any other value of the file, by its path. */
function ownPathHtml(id: string): string {
  return `<details class="livegroup liveown"><summary>Any other value</summary>
<p class="how">Its path in the scenario file, and the new value, as a variation writes it.</p>
<div class="liverow" data-key="="><label for="${id}-own-path">Path</label><input type="text" id="${id}-own-path" placeholder="carriers.start" autocomplete="off" spellcheck="false"><label for="${id}-own-value">Value</label><input type="text" id="${id}-own-value" placeholder="packed" autocomplete="off" spellcheck="false"><button type="button" data-act="own">Change it</button></div>
</details>`
}
