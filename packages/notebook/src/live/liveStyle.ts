/** How the controls of a page look that change the line. */
export const LIVE_STYLE = `
html:not(.working) [data-part="what-if"], html:not(.working) .contents li:has([href="#what-if"]) { display: none; }
.live .livesides { display: flex; flex-direction: column; gap: 24px; margin-top: 16px; }
.live .livegroup { margin: 0; border-top: 1px solid var(--lw-hairline); }
.live .livegroup > summary { padding: 8px 0; width: auto; }
.livecount { color: var(--lw-accent); font-weight: 600; }
.liverow { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0 12px; align-items: baseline; padding: 4px 0 8px 13px; }
.liverow.changed { padding-left: 10px; border-left: 3px solid var(--lw-accent); }
.liverow.changed > label { font-weight: 600; }
.livefield { grid-column: 1 / -1; display: grid; grid-template-columns: minmax(0, 1fr) 10.5em; gap: 12px; align-items: center; }
.livefield.livechoice { grid-template-columns: minmax(0, 1fr); }
.liverow label { grid-column: 1; grid-row: 1; overflow-wrap: anywhere; }
.livewas { color: var(--lw-quiet); font-size: 14px; font-variant-numeric: tabular-nums; }
.liverow > .livewas { grid-column: 2; grid-row: 1; text-align: right; }
.live input, .live select, .live button { font: inherit; font-size: 14px; color: inherit; }
.live input[type="range"] { width: 100%; min-height: 28px; margin: 0; accent-color: var(--lw-accent); touch-action: pan-y; }
.live input[type="text"], .live select { width: 100%; min-width: 0; min-height: 32px; padding: 4px 6px; border: 1px solid var(--lw-quiet); background: var(--lw-paper); border-radius: 0; }
.live [aria-invalid="true"] { outline: 2px solid var(--lw-ink); outline-offset: 1px; }
.live button { min-height: 32px; padding: 4px 10px; border: 1px solid var(--lw-quiet); background: var(--lw-paper); cursor: pointer; }
.live button:hover:not(:disabled) { border-color: var(--lw-ink); }
.live button:disabled { color: var(--lw-quiet); border-color: var(--lw-hairline); cursor: default; }
.live kbd { font: inherit; font-size: 12px; padding: 0 4px; border: 1px solid var(--lw-hairline); }
.liveact { display: flex; flex-wrap: wrap; gap: 8px; margin: 8px 0 16px; max-width: none; }
.liveown .liverow { grid-template-columns: minmax(0, 1fr); gap: 4px; }
.liveown .liverow > * { grid-column: 1; grid-row: auto; }
.liveownlist { padding-left: 20px; }
.livezones svg { display: block; max-width: 100%; height: auto; }
.zonehandle { cursor: grab; touch-action: none; }
.zonehandle circle { fill: var(--lw-paper); stroke: var(--lw-ink); stroke-width: 1.6; }
.zonehandle text { fill: var(--lw-ink); pointer-events: none; }
.zonehandle.moved circle { fill: var(--lw-accent); stroke: var(--lw-accent); }
.zonehandle.moved text { fill: var(--lw-paper); }
.livezones [data-zone].aim path, .livezones [data-zone].aim rect { stroke: var(--lw-accent); stroke-width: 3; }
.livestate { font-size: 14px; color: var(--lw-quiet); min-height: 1.5em; }
.livetold { min-height: 84px; }
.live .figures { grid-template-columns: repeat(auto-fit, minmax(132px, 1fr)); max-width: none; }
.live .figures .livewas, .live .figures .livemore { display: block; }
.live .figures .changed { box-shadow: inset 3px 0 0 var(--lw-accent); padding-left: 8px; }
.livemore { font-weight: 600; font-variant-numeric: tabular-nums; }
.livechanges { padding-left: 20px; }
.livetold > p, .livetold > ul { margin: 0 0 8px; }
.livetold > .caption { margin-top: 16px; }
.liveyaml, .liverefused { font: 14px/1.5 ui-monospace, "SFMono-Regular", Menlo, Consolas, "Liberation Mono", "DejaVu Sans Mono", monospace; overflow-x: auto; margin: 8px 0; padding: 8px 0; border-top: 1px solid var(--lw-hairline); border-bottom: 1px solid var(--lw-hairline); white-space: pre; }
.liverefused { white-space: pre-wrap; overflow-wrap: anywhere; border: 0; }
.livecurve { margin: 16px 0; max-width: 720px; }
.livecurve .finding { margin: 0 0 8px; }
figure.changed { box-shadow: -10px 0 0 var(--lw-paper), -13px 0 0 var(--lw-accent); }
.offile { position: absolute; z-index: 1; top: -24px; left: 0; margin: 0; padding: 0 4px; font-size: 12px; line-height: 20px; color: var(--lw-ink); background: var(--lw-paper); border: 1px solid var(--lw-quiet); white-space: nowrap; }
.answer > .offile { top: -11px; }
@media print { .offile { display: none; } figure.changed { box-shadow: none; } }
.livekept h3 { margin-top: 24px; }
@media (min-width: 900px) {
  .live .livesides { display: grid; grid-template-columns: minmax(0, 380px) minmax(0, 1fr); column-gap: 40px; align-items: start; }
  .live .liveout { position: sticky; top: 8px; max-height: calc(100vh - 16px); overflow-y: auto; }
}
#watch { margin-top: 40px; }
.replay button, .replay select, .replay input { font: inherit; font-size: 14px; color: inherit; }
.replay button, .replay select, .replay input[type="text"] { min-height: 32px; padding: 4px 10px; border: 1px solid var(--lw-quiet); background: var(--lw-paper); border-radius: 0; }
.replay select { min-width: 0; max-width: 26em; flex: 0 1 auto; }
.replay button { cursor: pointer; }
.replay label { display: inline-flex; align-items: center; gap: 8px; font-size: 14px; max-width: 100%; white-space: nowrap; }
.replay .liveact > * { min-width: 0; }
.replaynumber { width: 5em; }
.replayscrub { width: 100%; min-height: 28px; margin: 0; accent-color: var(--lw-accent); }
.replaynow { font-size: 14px; font-variant-numeric: tabular-nums; margin: 0; }
.replayclock { font-size: 20px; }
.replayplan svg { display: block; max-width: 100%; height: auto; }
.replaysays { min-height: 3em; max-width: none; font-size: 14px; }
.replaylegend { max-width: none; white-space: pre-wrap; }
.replaysign { display: inline-block; min-width: 20px; padding: 0 3px; text-align: center; font-weight: 700; font-size: 12px; line-height: 18px; forced-color-adjust: none; }
.replaystate rect { stroke: var(--lw-ink); stroke-width: 1; }
.replaycarrier rect { fill: var(--lw-paper); stroke: var(--lw-ink); stroke-width: 2; }
.replaycarrier text { fill: var(--lw-ink); }
.replaycarrier.loaded rect { fill: var(--lw-ink); }
.replaycarrier.loaded text { fill: var(--lw-paper); }
.replaycarrier[hidden] { display: none; }
.replayoperator circle { fill: var(--lw-paper); stroke: var(--lw-accent); stroke-width: 2; }
.replayoperator.bound circle { fill: var(--lw-accent); }
.replayoperator text { fill: var(--lw-ink); }
.replayoperator.bound text { fill: var(--lw-paper); }
.replayheld { fill: none; stroke: none; }
.replayheld.now { fill: var(--lw-accent); fill-opacity: 0.35; stroke: var(--lw-accent); stroke-width: 3; }
.replayat { stroke: var(--lw-accent); stroke-width: 2; pointer-events: none; }
.replaytimeline { cursor: pointer; }
@media (prefers-reduced-motion: no-preference) {
  .replayheld.now, .replaystate.stopped rect { animation: replayflash 1s steps(2, jump-none) infinite; }
}
@keyframes replayflash { from { stroke-opacity: 1; stroke-width: 4; } to { stroke-opacity: 0.3; stroke-width: 1; } }
@media print { [data-part="what-if"] { display: none; } }
`
