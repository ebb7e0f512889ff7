/** Plays a run: the controls, the clock, the sentences, the timeline beside it. */
import { STATE_LOOKS, STATES } from '@loopwright/charts/draw'
import type { Watched } from '../../live/liveSession.ts'
import { drawingHtml } from '../../page/drawingHtml.ts'
import { countAt, holdsAt, stationAt } from '../../replay/replayAt.ts'
import { clockText } from '../../words/clockWords.ts'
import type { FromEngine } from '../live/protocol.ts'
import { makeScene, type Scene } from './scene.ts'

export interface Player {
  /** What the worker tells of runs and their timelines. */
  readonly hear: (message: FromEngine) => void
  /** Another setting holds: a run that is watched is simulated anew. */
  readonly renew: () => void
}

export interface PlayerOptions {
  /** asks the worker for a run */
  readonly watch: (replication: number) => void
  /** asks it for the timeline of a stretch */
  readonly stretch: (fromSeconds: number, toSeconds: number) => void
}

/** seconds of the run that the timeline shows at least, and seconds of the reader's time that it lasts at least */
const STRETCH = 600
const LASTS = 12
/** events are so close that a step onto one shows what came of it */
const JUST = 1e-6

export function playerOf(place: HTMLElement, { watch, stretch }: PlayerOptions): Player {
  const part = <E extends Element = HTMLElement>(selector: string): E => place.querySelector<E>(selector)!
  const button = (what: string): HTMLButtonElement => part(`[data-play="${what}"]`)
  const [scrub, clock, says, body] = [
    part<HTMLInputElement>('.replayscrub'),
    part('.replayclock'),
    part('.replaysays'),
    part('.replaybody'),
  ]
  const [speed, marks, number] = [
    part<HTMLSelectElement>('.replayspeed'),
    part<HTMLSelectElement>('.replaymarks'),
    part<HTMLInputElement>('.replaynumber'),
  ]
  let watched: Watched | null = null
  let scene: Scene | null = null
  let now = 0
  let playing = false
  /** of the frame before; null: none yet */
  let last: number | null = null
  let shown: { from: number; to: number; svgs: { line: SVGLineElement; from: number; to: number }[] } | null = null
  let asked: readonly [number, number] | null = null

  /** @param told  said in words too, unless it plays */
  function show(seconds: number, told: boolean): void {
    if (watched === null) return
    const { replay } = watched
    now = Math.max(0, Math.min(replay.endSeconds, seconds))
    scene?.show(now)
    clock.textContent = clockOf(now)
    scrub.value = String(now)
    part('.replaymade').textContent =
      ` · ${Math.max(0, countAt(replay.made, now) - countAt(replay.made, replay.warmupSeconds))} units counted`
    follow()
    if (told && !playing) {
      scrub.setAttribute('aria-valuetext', clockOf(now))
      says.textContent = sentence()
    }
  }
  const clockOf = (seconds: number): string => {
    const whole = Math.floor(seconds + JUST)
    const day = clockText(watched?.shiftStarts ?? [], whole)
    const run = `${Math.floor(whole / 3600)}:${String(Math.floor(whole / 60) % 60).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')} of the run`
    return day === null ? run : `${day.length === 5 ? `${day}:00` : day} (${run})`
  }
  function sentence(): string {
    const { replay, line } = watched!
    const stations = line.stations.map(({ name }, index) => `${name} ${stationAt(replay, index, now)}`)
    const holds = holdsAt(replay, now).map(({ name }) => name)
    return `${stations.join(', ')}.${holds.length === 0 ? '' : ` Stopped by: ${holds.join(', ')}.`}`
  }
  /** The line on the timeline; a stretch that does not hold the instant is asked for anew. */
  function follow(): void {
    const length = Math.max(STRETCH, playing ? LASTS * Number(speed.value) : 0)
    const end = watched!.replay.endSeconds
    if (shown === null || now < shown.from || now > shown.to) {
      const from = Math.max(0, Math.min(now - length * 0.1, end - length))
      const to = Math.min(end, from + length)
      if (asked === null || now < asked[0] || now > asked[1]) {
        asked = [from, to]
        stretch(from, to)
      }
    }
    for (const { line, from, to } of shown?.svgs ?? []) {
      const x = from + ((now - shown!.from) / (shown!.to - shown!.from)) * (to - from)
      line.setAttribute('x1', x.toFixed(1))
      line.setAttribute('x2', x.toFixed(1))
    }
  }
  function frame(stamp: number): void {
    if (!playing || watched === null) return
    show(now + Math.min(0.25, (stamp - (last ?? stamp)) / 1000) * Number(speed.value), false)
    last = stamp
    if (now >= watched.replay.endSeconds) play(false)
    else requestAnimationFrame(frame)
  }
  function play(on: boolean): void {
    playing = on && watched !== null
    button('play').textContent = playing ? 'Pause' : 'Play'
    if (playing) {
      if (now >= watched!.replay.endSeconds) now = 0
      last = null
      // what was said of the instant before is not true of this one
      says.textContent = 'Pause to read what each station does.'
      requestAnimationFrame(frame)
    } else if (watched !== null) show(now, true)
  }
  /** to the next event, or the one before */
  function step(by: 1 | -1): void {
    play(false)
    const { instants } = watched!.replay
    const at = countAt(instants, by > 0 ? now + JUST : now - JUST)
    const next = by > 0 ? instants[at] : instants[at - 1]
    if (next !== undefined) show(next, true)
  }
  function load(): void {
    play(false)
    const replication = /^\d{1,6}$/.test(number.value.trim()) ? Number(number.value) : 0
    number.value = String(replication)
    says.textContent = 'Simulating …'
    watch(replication)
  }
  function begin(found: Watched): void {
    watched = found
    shown = null
    asked = null
    body.hidden = false
    button('load').textContent = 'Watch this run'
    scene = makeScene(part('.replayplan'), found)
    scrub.max = String(Math.floor(found.replay.endSeconds))
    marks.replaceChildren(
      new Option('…', ''),
      ...found.replay.marks.map(
        ({ label, seconds }, index) =>
          new Option(`${label} (${clockText(found.shiftStarts, Math.floor(seconds)) ?? `${Math.floor(seconds / 60)} min`})`, String(index)),
      ),
    )
    const states = STATES.filter((state) => found.replay.stations.some((own) => own.some((stretchOf) => stretchOf.state === state)))
    part('.replaylegend').replaceChildren(
      ...states.flatMap((state) => {
        const sign = document.createElement('span')
        sign.className = 'replaysign'
        sign.style.background = `var(--lw-state-${STATES.indexOf(state)})`
        sign.style.color = `var(--lw-on-state-${STATES.indexOf(state)})`
        sign.textContent = STATE_LOOKS[state].letter
        return [sign, ` ${state}  `]
      }),
      'Filled carrier: with a product. Coloured ground of a zone: stopped.',
    )
    show(Math.min(Math.max(now, 0), found.replay.endSeconds), true)
  }

  const acts: Readonly<Record<string, () => void>> = { load, play: () => play(!playing), back: () => step(-1), on: () => step(1) }
  place.addEventListener('click', (event) => {
    const act = (event.target as Element).closest<HTMLElement>('[data-play]')?.dataset.play
    if (act !== undefined) acts[act]?.()
  })
  number.addEventListener('change', load)
  scrub.addEventListener('input', () => show(Number(scrub.value), !playing))
  marks.addEventListener('change', () => {
    if (marks.value === '') return
    play(false)
    show(watched!.replay.marks[Number(marks.value)]!.seconds, true)
  })
  part('.replaytimeline').addEventListener('click', (event) => {
    const svg = (event.target as Element).closest<SVGSVGElement>('svg')
    const own = shown?.svgs.find(({ line }) => line.ownerSVGElement === svg)
    if (svg === null || own === undefined) return
    const box = svg.getBoundingClientRect()
    const x = ((event.clientX - box.left) / box.width) * svg.viewBox.baseVal.width
    show(shown!.from + ((x - own.from) / (own.to - own.from)) * (shown!.to - shown!.from), !playing)
  })
  new ResizeObserver(() => {
    // drawn for another width
    if (watched === null || Math.abs(part('.replayplan').clientWidth - drawnFor) < 8) return
    drawnFor = part('.replayplan').clientWidth
    scene = makeScene(part('.replayplan'), watched)
    scene.show(now)
  }).observe(part('.replayplan'))
  let drawnFor = 0

  return {
    renew: () => {
      if (watched !== null) load()
    },
    hear(message) {
      if (message.kind === 'watched') begin(message.watched)
      else if (message.kind === 'not watched') says.textContent = message.text
      else if (message.kind === 'failed') says.textContent = `No run can be watched here: ${message.message}.`
      else if (message.kind === 'stretched') {
        const holder = part('.replaytimeline')
        holder.innerHTML = `<div class="picture" role="img"></div>`
        const picture = holder.firstElementChild!
        picture.setAttribute('aria-label', message.figure.alt)
        picture.innerHTML = drawingHtml({ ...message.figure.drawing, followed: true })
        const svgs = [...picture.querySelectorAll('svg')].map((svg) => {
          const [from, to, top, bottom] = (svg.dataset.area ?? '0 0 0 0').split(' ').map(Number) as [number, number, number, number]
          const line = document.createElementNS('http://www.w3.org/2000/svg', 'line')
          for (const [key, value] of Object.entries({ class: 'replayat', y1: top, y2: bottom, x1: from, x2: from }))
            line.setAttribute(key, String(value))
          svg.append(line)
          return { line, from, to }
        })
        shown = { from: message.fromSeconds, to: message.toSeconds, svgs }
        asked = null
        follow()
      }
    },
  }
}
