import { themeCss } from '@loopwright/charts/draw'
import { LIVE_STYLE } from '../live/liveStyle.ts'

/** The page's style sheet: the colours of the charts' look, then the setting of the text. */
export function pageStyle(): string {
  return `${themeCss()}\n${STYLE}${SAVE_STYLE}${LIVE_STYLE}`
}

/** What is taken out of the page: quiet words under a figure and the answer; nothing of it on paper, or without scripts. */
const SAVE_STYLE = `
.saves { display: none; margin: 4px 0 0; font-size: 14px; color: var(--lw-quiet); max-width: none; }
html.script .saves { display: block; }
.saves button { font: inherit; color: inherit; min-height: 28px; min-width: 28px; padding: 0 6px 0 0; border: 0; background: none; cursor: pointer; text-decoration: underline; text-decoration-color: var(--lw-hairline); text-underline-offset: 3px; }
.saves button:hover { color: var(--lw-ink); text-decoration-color: currentColor; }
@media (pointer: coarse) { .saves button { min-height: 44px; min-width: 44px; } }
@media print { html.script .saves { display: none; } }
`

const STYLE = `
* { box-sizing: border-box; }
html { font: 16px/1.5 system-ui, -apple-system, "Segoe UI", "Noto Sans", "Liberation Sans", "DejaVu Sans", sans-serif; -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body { margin: 0 auto; max-width: 1132px; padding: 0 16px 64px; color: var(--lw-ink); background: var(--lw-paper); }
h1, h2, h3, p, ul, ol, figure, table, fieldset, dl { margin: 0; }
h1 { font-size: 28px; line-height: 1.25; text-wrap: balance; }
h2 { font-size: 20px; line-height: 1.3; margin: 0 0 16px; max-width: 30em; }
h2 a.here { color: var(--lw-quiet); text-decoration: none; margin-left: 8px; padding: 0 4px; font-weight: 400; }
h3, h4 { font-size: 16px; line-height: 1.4; margin: 32px 0 8px; }
p, ul, ol, dl, .finding { max-width: 60ch; }
.prose p, .prose ul, .prose ol, .caution p, .caution ul { margin: 0 0 12px; }
a { color: var(--lw-accent); }
code { font: 14px/1.5 ui-monospace, "SFMono-Regular", Menlo, Consolas, "Liberation Mono", "DejaVu Sans Mono", monospace; overflow-wrap: anywhere; }
pre { white-space: pre-wrap; }
:focus-visible { outline: 2px solid var(--lw-accent); outline-offset: 2px; }
.skip { position: absolute; left: -9999px; }
.skip:focus { left: 16px; top: 8px; padding: 4px 8px; background: var(--lw-paper); z-index: 2; }
.hidden { position: absolute; width: 1px; height: 1px; margin: -1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
header { padding-top: 16px; }
.where { font-size: 14px; margin-bottom: 4px; color: var(--lw-quiet); }
.answer { margin: 16px 0 32px; padding-top: 16px; border-top: 1px solid var(--lw-ink); }
.answer .first { font-size: 20px; line-height: 1.4; max-width: 48ch; }
.answer .more p + p { margin-top: 8px; }
.answer .more { margin-top: 16px; }
.figures { display: grid; grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 12px 16px; margin-bottom: 16px; max-width: 480px; }
.figures dt { font-size: 14px; color: var(--lw-quiet); }
.figures dd { margin: 0; }
.figures .value { display: block; font-size: 28px; line-height: 1.15; font-variant-numeric: tabular-nums; letter-spacing: -0.01em; }
.figures .value.long { font-size: 20px; }
.figures .value.words { font-size: 16px; line-height: 1.3; }
.figures div:first-child .value { color: var(--lw-accent); }
.asides { display: grid; gap: 12px; margin-top: 16px; font-size: 14px; }
.asides h2 { margin: 0 0 2px; font-size: 14px; color: var(--lw-quiet); font-weight: 400; }
.asides p { margin: 0 0 8px; }
.figures .how { display: block; margin-top: 2px; }
.answer { display: flex; flex-direction: column; }
.answer figure { margin: 16px 0 0; }
.answer.alone { display: block; }
.handout { display: none; }
.contents { margin: 0 0 32px; padding: 8px 0; border-top: 1px solid var(--lw-hairline); border-bottom: 1px solid var(--lw-hairline); font-size: 14px; }
.contents ul { display: flex; flex-wrap: wrap; gap: 4px 24px; padding: 0; list-style: none; max-width: none; }
.contents a { display: inline-block; padding: 4px 0; }
.part { margin-top: 56px; }
.leadnumbers { margin: 0 0 32px; }
.fold > summary { font-size: 16px; }
.fold > .tablecell:first-of-type { margin-top: 16px; }
.howsure { margin: 0 0 32px; }
.howsure .sure { font-size: 14px; max-width: 68ch; }
.howsure .sure + .sure { margin-top: 4px; }
.answer code, .howsure code { font-size: inherit; }
figure { margin: 0 0 48px; }
.tablecell { margin: 0 0 32px; }
figure:has(+ .howsure), .tablecell:has(+ .howsure) { margin-bottom: 16px; }
figure .finding { margin: 0 0 12px; font-size: 16px; font-weight: 600; }
[id] { scroll-margin-top: 16px; }
.picture { min-height: 40px; overflow: hidden; }
.picture .narrow { display: none; }
.picture svg.lw-drawing { width: 100%; height: auto; }
.picture .wide .lw-drawing { max-width: 720px; }
.picture .narrow .lw-drawing { max-width: 460px; }
[data-pick] { cursor: pointer; }
[data-pick].picked { opacity: 1; fill-opacity: 0.1; }
g:has(> .picked) { opacity: 1; fill-opacity: 0; }
g:has(> .picked) > .picked { fill: var(--lw-accent); }
.tip { position: fixed; visibility: hidden; z-index: 3; left: 0; top: 0; padding: 6px 8px; font-size: 14px; line-height: 1.35; color: var(--lw-ink); background: var(--lw-paper); border: 1px solid var(--lw-ink); pointer-events: none; max-width: min(320px, calc(100vw - 16px)); }
.tip.visible { visibility: visible; }
.picture .chart { width: 100%; }
.picture svg { display: block; max-width: 100%; }
.plan .paper { display: none; }
html:not(.script) .picture.waiting { display: none; }
noscript img { display: block; max-width: 100%; background: #ffffff; }
.how, .note { font-size: 14px; color: var(--lw-quiet); margin-top: 8px; max-width: 68ch; }
details { margin-top: 8px; font-size: 14px; }
summary { cursor: pointer; color: var(--lw-accent); width: fit-content; padding: 4px 0; }
.scroll { overflow-x: auto; max-width: 100%; }
table { border-collapse: collapse; font-size: 14px; line-height: 1.35; font-variant-numeric: tabular-nums; }
.caption { font-size: 14px; font-weight: 600; margin-bottom: 4px; max-width: 68ch; }
th, td { padding: 4px 16px 4px 0; text-align: left; vertical-align: top; border-bottom: 1px solid var(--lw-hairline); font-weight: 400; }
th:last-child, td:last-child { padding-right: 0; }
thead th { border-bottom: 1px solid var(--lw-ink); vertical-align: bottom; color: var(--lw-quiet); }
html.script .scroll th[scope="row"], html.script .scroll thead > tr > :first-child { position: sticky; left: 0; background: var(--lw-paper); }
.number { text-align: right; }
td.number { white-space: nowrap; }
td.long { min-width: 16em; }
tbody tr.marked > * { font-weight: 600; }
tbody tr.marked > :first-child { box-shadow: inset 3px 0 0 var(--lw-accent); padding-left: 8px; }
.choice { display: none; border: 0; padding: 8px 0; margin: 0 0 24px; position: sticky; top: 0; z-index: 1; background: var(--lw-paper); border-bottom: 1px solid var(--lw-hairline); min-width: 0; }
html.script .choice { display: block; }
.choice legend { padding: 0; font-size: 14px; float: left; margin: 6px 12px 0 0; }
.choice .options { display: flex; flex-wrap: wrap; gap: 4px; }
.choice label { position: relative; cursor: pointer; font-variant-numeric: tabular-nums; }
.choice input { position: absolute; inset: 0; width: 100%; height: 100%; margin: 0; opacity: 0; cursor: pointer; }
.choice span { display: block; min-width: 32px; padding: 4px 6px; text-align: center; border: 1px solid var(--lw-hairline); }
.choice input:hover + span { border-color: var(--lw-ink); }
.choice .answered > span { border-color: var(--lw-ink); border-bottom-width: 3px; padding-bottom: 2px; }
.choice input:checked + span { color: var(--lw-paper); background: var(--lw-accent); border-color: var(--lw-accent); }
.choice input:focus-visible + span { outline: 2px solid var(--lw-accent); outline-offset: 2px; }
.caution { margin: 0 0 16px; }
.caution.warning { border-left: 3px solid var(--lw-ink); padding-left: 12px; margin-top: 16px; }
.caution h2, .caution h3 { margin-top: 0; font-size: 16px; }
footer { margin-top: 64px; padding-top: 16px; border-top: 1px solid var(--lw-ink); font-size: 14px; }
footer dl { max-width: none; display: grid; grid-template-columns: max-content minmax(0, 1fr); gap: 4px 16px; }
footer dt { color: var(--lw-quiet); }
footer dd { margin: 0; overflow-wrap: anywhere; }
#vg-tooltip-element { position: fixed; visibility: hidden; z-index: 3; padding: 6px 8px; font-size: 14px; line-height: 1.35; color: var(--lw-ink); background: var(--lw-paper); border: 1px solid var(--lw-ink); pointer-events: none; max-width: 320px; }
#vg-tooltip-element.visible { visibility: visible; }
#vg-tooltip-element td, #vg-tooltip-element th { border: 0; padding: 0 8px 0 0; }
#vg-tooltip-element td.key { color: var(--lw-quiet); }
@media (min-width: 1132px) {
  .answer { display: grid; grid-template-columns: 384px 684px; column-gap: 32px; grid-template-rows: auto auto 1fr auto auto; }
  .answer.alone { display: block; }
  .answer .figures { grid-area: 1 / 1; }
  .answer .figures .value { font-size: 44px; }
  .answer .figures .value.long { font-size: 28px; }
  .answer .figures .value.words { font-size: 20px; }
  .answer .said { grid-area: 2 / 1; }
  .answer .figures + .said .first { font-size: 16px; }
  .answer .asides { grid-area: 3 / 1; align-content: start; }
  .answer .asides:has(section + section) { display: contents; font-size: 14px; line-height: 1.4; }
  .asides:has(section + section) > section:first-child { grid-area: 3 / 1; margin-top: 16px; }
  .asides > section + section { grid-area: 4 / 2; margin-top: 12px; }
  .asides > section + section p { max-width: none; }
  .answer .more { grid-area: 5 / 1 / 6 / 3; columns: 2; column-gap: 40px; margin-top: 24px; }
  .answer .more p { break-inside: avoid; }
  .answer.alone .more { columns: auto; }
  .answer figure { grid-area: 1 / 2 / 4 / 3; margin: 0; }
  .lead.plan .picture .wide { display: none; }
  .lead.plan .picture .paper { display: block; }
  figure.chart:not(.lead) .together { display: grid; grid-template-columns: 340px 720px; column-gap: 40px; grid-template-rows: auto 1fr; }
  figure.chart:not(.lead) figcaption { grid-area: 1 / 1; }
  figure.chart:not(.lead) .how { grid-area: 2 / 1; }
  figure.chart:not(.lead) .picture { grid-area: 1 / 2 / 3 / 3; }
}
@media (max-width: 639px) {
  .picture .wide { display: none; }
  .picture .narrow { display: block; }
  h1 { font-size: 20px; }
  .part { margin-top: 48px; }
  .answer .first { font-size: 16px; }
  .choice legend { float: none; margin: 0 0 4px; }
  footer dl { grid-template-columns: minmax(0, 1fr); gap: 0; }
  footer dd { margin-bottom: 8px; }
}
@media (forced-colors: active) {
  :root { --lw-ink: CanvasText; --lw-paper: Canvas; --lw-quiet: CanvasText; --lw-hairline: GrayText; --lw-accent: Highlight; }
  .picture svg { forced-color-adjust: none; }
  .choice input:checked + span { forced-color-adjust: none; color: HighlightText; background: Highlight; border-color: Highlight; }
}
@media (max-height: 479px) { .choice { position: static; } }
@media (prefers-reduced-motion: no-preference) { html { scroll-behavior: smooth; } }
@media print {
  @page { margin: 16mm; @bottom-right { content: counter(page) " / " counter(pages); font: 9pt sans-serif; color: #404045; } }
  html { font-size: 10pt; }
  code { font-size: 0.95em; line-height: inherit; }
  body { max-width: none; padding: 0; }
  .skip, html.script .choice, summary, h2 a.here { display: none; }
  a { color: inherit; text-decoration: none; }
  header { padding: 0; }
  h1 { font-size: 14pt; }
  h2 { font-size: 13pt; margin-bottom: 10px; }
  h3, h4 { font-size: 10.5pt; margin: 18px 0 6px; }
  .how, .note, .howsure .sure, .caption { font-size: 8.5pt; line-height: 1.35; }
  .how, .note { margin-top: 6px; }
  figure .finding { font-size: 10.5pt; line-height: 1.3; margin-bottom: 8px; max-width: none; }
  .part { margin-top: 24px; }
  .contents { display: none; }
  .contents + * { margin-top: 0; }
  .handout { display: grid; grid-template-columns: 3fr 2fr; column-gap: 28px; break-inside: avoid; margin: 8px 0 16px; font-size: 7.5pt; line-height: 1.3; border-top: 1px solid var(--lw-hairline); padding-top: 6px; }
  .answer:has(.asides) ~ .handout { break-after: page; }
  .answer:has(.asides) ~ .caution.warning ~ .handout { break-after: auto; }
  .handout ul { margin: 0; padding-left: 14px; max-width: none; overflow-wrap: anywhere; }
  .handout h2, .answer h2.aside { font-size: 8.5pt; margin: 0 0 2px; }
  .answer { display: grid; grid-template-columns: 328px minmax(0, 1fr); grid-template-rows: auto auto auto 1fr; column-gap: 24px; margin: 8px 0 0; padding-top: 8px; }
  .answer.alone { display: block; }
  .answer .figures { grid-area: 1 / 1 / 2 / 3; grid-template-columns: repeat(4, minmax(0, 1fr)); max-width: none; margin-bottom: 8px; }
  .answer .figures .value { font-size: 22pt; }
  .answer .figures .value.long { font-size: 16pt; }
  .answer .figures .value.words { font-size: 12pt; }
  .figures dt, .figures .how { font-size: 8.5pt; }
  .answer .figures, .answer .said { break-inside: avoid; break-after: avoid; }
  .part > .answer { margin-bottom: 16px; }
  .answer .said { grid-area: 2 / 1 / 3 / 3; }
  .answer .first { font-size: 10.5pt; max-width: none; }
  .answer figure { grid-area: 3 / 1 / 5 / 2; margin: 8px 0 0; }
  .answer figure .how { display: none; }
  .answer figure .picture svg { max-height: 112mm; }
  .answer:has(~ .caution.warning) figure .picture svg { max-height: 84mm; }
  .answer .asides { grid-area: 3 / 2; margin-top: 8px; gap: 6px; font-size: 8.5pt; }
  .answer .asides p, .answer .more p { max-width: none; line-height: 1.35; }
  .answer .more { grid-area: 4 / 2; columns: auto; margin-top: 6px; font-size: 8.5pt; }
  .answer .more p + p { margin-top: 4px; }
  .caution.warning { margin-top: 8px; font-size: 9pt; line-height: 1.35; }
  .caution.warning p, .caution.warning ul { margin-bottom: 4px; max-width: 90ch; }
  .caution.warning :is(h2, h3) { font-size: 10pt; margin-bottom: 4px; }
  h2, h3, .finding, .caption { break-after: avoid; }
  .picture .narrow, .plan .wide { display: none; }
  .picture .wide, .plan .paper, .lead.chart .picture .narrow { display: block; }
  .lead.chart .picture .wide { display: none; }
  .picture .wide .lw-drawing { max-width: 600px; max-height: 105mm; }
  .plan .paper svg { max-width: 540px; max-height: 90mm; }
  .part > .prose:first-of-type p:last-child { break-inside: avoid; }
  .note { break-before: avoid; }
  .plan .picture .wide { display: none; }
  .together, .howsure, .caution, .tablecell:has(table.short), table.short, tr { break-inside: avoid; }
  tr:nth-child(-n+3) { break-after: avoid; }
  tr:nth-last-child(-n+3) { break-before: avoid; }
  tr:has(td.long ~ td.long) { break-after: auto; break-before: auto; }
  thead { break-after: avoid; }
  .caption { break-inside: avoid; padding-bottom: 150px; margin-bottom: -146px; }
  .caption:has(+ .scroll td.long ~ td.long) { padding-bottom: 220px; margin-bottom: -216px; }
  figure, .tablecell, .howsure, .leadnumbers { margin-bottom: 20px; }
  figure:has(+ .howsure), .tablecell:has(+ .howsure) { margin-bottom: 10px; }
  p { orphans: 3; widows: 3; }
  .part:last-child > :is(.caution, .prose, .tablecell:has(table.short)):last-child { break-inside: avoid; padding-bottom: 150px; margin-bottom: -150px; }
  main:has(+ footer dt:nth-of-type(6)) > .part:last-child > :is(.caution, .prose, .tablecell):last-child { padding-bottom: 200px; margin-bottom: -200px; }
  footer { margin-top: 16px; padding-top: 6px; font-size: 8pt; break-before: avoid; }
  footer dl { gap: 2px 12px; max-width: none; }
  details::details-content { content-visibility: visible; display: block; height: auto; }
  .scroll { overflow: visible; }
  .picture svg { height: auto; }
  table { font-size: 8.5pt; max-width: 100%; }
  td.long { min-width: 0; }
  table:has(td.long ~ td.long ~ td.long) { font-size: 7.5pt; }
  th, td { padding: 3px 10px 3px 0; }
}
`
