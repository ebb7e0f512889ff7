/** The moving parts of a replay: carriers, states of stations, what is stopped, operators. A frame touches only what has changed. */
import { STATE_LOOKS, STATES } from '@loopwright/charts/draw'
import type { Watched } from '../../live/liveSession.ts'
import { carrierAt, holdsAt, operatorAt, stationAt } from '../../replay/replayAt.ts'
import { layPlan } from './plan.ts'

export interface Scene {
  /** Shows the run at an instant, seconds from its start. */
  readonly show: (seconds: number) => void
}

const SVG = 'http://www.w3.org/2000/svg'
/** half a carrier, in pixels of the drawing */
const CARRIER_MOST = 13
const OPERATOR = 7

export function makeScene(place: HTMLElement, { replay, line }: Watched): Scene {
  const plan = layPlan(place, line)
  const layer = add(plan.svg, 'g', { class: 'replaylayer', 'aria-hidden': 'true' })
  const side = plan.badge
  // what is stopped lies under the carriers
  const covers = plan.zones.map(({ cell }) => {
    const cover = cell.querySelector('path, rect')!.cloneNode() as SVGElement
    for (const name of ['fill', 'stroke', 'stroke-width']) cover.removeAttribute(name)
    cover.setAttribute('class', 'replayheld')
    layer.append(cover)
    return cover
  })
  const half = Math.max(4, Math.min(CARRIER_MOST, ...plan.zones.map(({ halfWidth, halfHeight }) => Math.min(halfWidth, halfHeight) * 0.7)))
  const badges = line.stations.map(({ zone, name }) => {
    const { x, y } = plan.badges.get(zone)!
    const badge = add(layer, 'g', { class: 'replaystate', transform: `translate(${x} ${y})` })
    const ground = add(badge, 'rect', { x: -side, y: -side, width: 2 * side, height: 2 * side })
    const letter = add(badge, 'text', { 'text-anchor': 'middle', y: side / 2, 'font-size': side + 3, 'font-weight': 'bold' })
    const title = add(badge, 'title', {})
    return { badge, ground, letter, title, name, state: '' }
  })
  const carriers = replay.carriers.map((_, carrier) => {
    const mark = add(layer, 'g', { class: 'replaycarrier' })
    add(mark, 'rect', { x: -half, y: -half, width: 2 * half, height: 2 * half, rx: 2 })
    if (half >= 7) add(mark, 'text', { 'text-anchor': 'middle', y: 4, 'font-size': 11 }).textContent = String(carrier)
    return { mark, x: Number.NaN, y: Number.NaN, loaded: false, stored: false }
  })
  const operators = replay.operators.map(({ name }) => {
    const mark = add(layer, 'g', { class: 'replayoperator' })
    add(mark, 'circle', { r: OPERATOR })
    add(mark, 'text', { 'text-anchor': 'middle', y: 3.5, 'font-size': 10 }).textContent = name.slice(0, 1).toUpperCase()
    add(mark, 'title', {}).textContent = name
    return mark
  })
  const held = new Set<number>()

  const showCarriers = (seconds: number): void => {
    for (const [carrier, own] of carriers.entries()) {
      const at = carrierAt(replay.carriers[carrier]!, seconds)
      const stored = at.path < 0 && at.to < 0
      if (stored !== own.stored) own.mark.toggleAttribute('hidden', stored)
      own.stored = stored
      if (at.loaded !== own.loaded) own.mark.classList.toggle('loaded', at.loaded)
      own.loaded = at.loaded
      if (stored) continue
      const { x, y } = at.path < 0 ? plan.zones[at.to]! : plan.along(at.path, at.way)
      if (Math.abs(x - own.x) < 0.05 && Math.abs(y - own.y) < 0.05) continue
      own.mark.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`)
      Object.assign(own, { x, y })
    }
  }
  const showStations = (seconds: number): void => {
    for (const [index, own] of badges.entries()) {
      const state = stationAt(replay, index, seconds)
      if (state === own.state) continue
      own.state = state
      const place = STATES.indexOf(state)
      own.ground.setAttribute('fill', `var(--lw-state-${place})`)
      own.letter.setAttribute('fill', `var(--lw-on-state-${place})`)
      own.letter.textContent = STATE_LOOKS[state].letter
      own.title.textContent = `${own.name}: ${state}`
      own.badge.classList.toggle('stopped', state === 'stopped')
    }
  }
  const showHeld = (seconds: number): void => {
    const now = new Set(holdsAt(replay, seconds).flatMap(({ zones }) => zones ?? plan.zones.map((_, zone) => zone)))
    for (const [zone, cover] of covers.entries()) {
      if (now.has(zone) === held.has(zone)) continue
      cover.classList.toggle('now', now.has(zone))
      if (now.has(zone)) held.add(zone)
      else held.delete(zone)
    }
  }
  const showOperators = (seconds: number): void => {
    const taken = new Map<number, number>()
    for (const [index, mark] of operators.entries()) {
      const found = operatorAt(replay, index, seconds)
      if (found === null) continue
      const { now: at, before } = found
      const to = spotOf(at.station)
      const from = at.there || before === null ? to : spotOf(before.station)
      const way = at.there || at.to <= at.from ? 1 : (seconds - at.from) / (at.to - at.from)
      const beside = (taken.get(at.station) ?? 0) * 2 * OPERATOR
      if (at.there) taken.set(at.station, (taken.get(at.station) ?? 0) + 1)
      const [x, y] = [from.x + (to.x - from.x) * way + side + OPERATOR + beside, from.y + (to.y - from.y) * way + side]
      const moved = `translate(${x.toFixed(1)} ${y.toFixed(1)})`
      if (mark.getAttribute('transform') !== moved) mark.setAttribute('transform', moved)
      mark.classList.toggle('bound', at.bound)
    }
  }
  const spotOf = (station: number) => plan.badges.get(line.stations[station]!.zone)!
  return {
    show(seconds) {
      showHeld(seconds)
      showStations(seconds)
      showCarriers(seconds)
      showOperators(seconds)
    },
  }
}

function add(parent: Element, name: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
  const made = document.createElementNS(SVG, name)
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value))
  parent.append(made)
  return made
}
