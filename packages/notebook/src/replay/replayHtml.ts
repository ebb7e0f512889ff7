/** The controls of a replay, as HTML; the page's script fills it, and without one it is not seen. */

/** times as fast as the line */
export const SPEEDS = [1, 10, 60, 300, 1200]
const SPEED = 60

export function replayHtml(): string {
  const speeds = SPEEDS.map((speed) => `<option value="${speed}"${speed === SPEED ? ' selected' : ''}>× ${speed}</option>`).join('')
  return `<div class="replay" id="replay" role="group" aria-label="Watch one run">
<p class="how">One run of the line as it is set above, event by event, as the engine simulated it. It is a check of the model, not its proof: see whether the line behaves as yours does. One run is no forecast.</p>
<p class="liveact"><button type="button" data-play="load">Watch a run</button><label>Run number <input type="text" inputmode="numeric" class="replaynumber" value="0" autocomplete="off"></label></p>
<div class="replaybody" hidden>
<p class="liveact"><button type="button" data-play="play">Play</button><button type="button" data-play="back" aria-label="Back by one event">‹ event</button><button type="button" data-play="on" aria-label="On by one event">event ›</button><label>Speed <select class="replayspeed">${speeds}</select></label><label>Go to <select class="replaymarks"><option value="">…</option></select></label></p>
<p class="replaynow"><output class="replayclock"></output><span class="replaymade"></span></p>
<input type="range" class="replayscrub" min="0" max="1" step="1" value="0" aria-label="Instant of the run">
<div class="replayplan"></div>
<p class="replaysays" role="status"></p>
<p class="how replaylegend"></p>
<div class="replaytimeline"></div>
</div>
</div>`
}
