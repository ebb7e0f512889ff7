/** The plan on which stations are moved: dragged to another zone, or taken there by the arrow keys. Each stands beside its zone, whose name stays readable. */
import { signText } from '../../live/signText.ts'
import type { WatchedLine } from '../../replay/watchedLine.ts'
import { layPlan, type ReplayPlan } from '../replay/plan.ts'
import type { Row } from './rows.ts'

export interface ZonePlan {
  /** Draws it, now or when its place is opened. */
  readonly draw: (line: WatchedLine) => void
  /** Puts the stations where the fields say. */
  readonly follow: () => void
}

const SVG = 'http://www.w3.org/2000/svg'
const RADIUS = 12
/** pixels around the drawing, for handles outside the loop */
const ROOM = 2 * RADIUS + 4

interface Handle {
  readonly mark: SVGGElement
  readonly row: Row
}

export function zonePlanOf(place: HTMLElement, rows: readonly Row[]): ZonePlan {
  const holder = place.querySelector<HTMLElement>('.livezones')
  let line: WatchedLine | null = null
  let plan: ReplayPlan | null = null
  let handles: Handle[] = []

  function draw(): void {
    if (holder === null || line === null || plan !== null || holder.clientWidth === 0) return
    // without the stations of the file: where they stand now is what the handles show
    const bare = { ...line, plan: { ...line.plan, zones: line.plan.zones.map((zone) => ({ ...zone, station: null })) } }
    plan = layPlan(holder, bare, 'live-plan')
    const { x, y, width, height } = plan.svg.viewBox.baseVal
    plan.svg.setAttribute('viewBox', `${x - ROOM} ${y - ROOM} ${width + 2 * ROOM} ${height + 2 * ROOM}`)
    plan.svg.removeAttribute('height')
    plan.svg.setAttribute('role', 'group')
    plan.svg.removeAttribute('aria-labelledby')
    plan.svg.setAttribute('aria-label', 'Zones of the line; stations can be moved')
    handles = line.stations.flatMap(({ name, title }) => {
      const row = rows.find(({ input }) => input.key === `${name}.zone`)
      return row === undefined ? [] : [handleOf(row, name, title)]
    })
    follow()
  }

  function handleOf(row: Row, name: string, title: string): Handle {
    const mark = document.createElementNS(SVG, 'g')
    const circle = document.createElementNS(SVG, 'circle')
    const text = document.createElementNS(SVG, 'text')
    circle.setAttribute('r', String(RADIUS))
    for (const [key, value] of [
      ['text-anchor', 'middle'],
      ['y', '4'],
      ['font-size', signText(name).length > 2 ? '9.5' : '11'],
    ] as const)
      text.setAttribute(key, value)
    text.textContent = signText(name)
    mark.setAttribute('class', 'zonehandle')
    mark.setAttribute('tabindex', '0')
    mark.setAttribute('role', 'slider')
    mark.setAttribute('aria-label', `Zone of ${title}`)
    const whole = document.createElementNS(SVG, 'title')
    whole.textContent = `${name} ${title}`
    mark.append(whole, circle, text)
    plan!.svg.append(mark)
    mark.addEventListener('pointerdown', (event) => drag(event, mark, row))
    mark.addEventListener('keydown', (event) => {
      const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key]
      if (by === undefined) return
      event.preventDefault()
      const count = line!.zones.length
      row.choose(line!.zones[(line!.zones.indexOf(row.text()) + by + count) % count]!)
    })
    return { mark, row }
  }

  function drag(event: PointerEvent, mark: SVGGElement, row: Row): void {
    event.preventDefault()
    mark.focus()
    mark.setPointerCapture(event.pointerId)
    let aim = line!.zones.indexOf(row.text())
    const move = ({ clientX, clientY }: PointerEvent): void => {
      const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(plan!.svg.getScreenCTM()!.inverse())
      mark.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`)
      plan!.zones[aim]?.cell.classList.remove('aim')
      aim = plan!.zones.reduce((best, zone, index) => (far(zone, x, y) < far(plan!.zones[best]!, x, y) ? index : best), 0)
      plan!.zones[aim]!.cell.classList.add('aim')
    }
    const stop = (last: Event): void => {
      mark.removeEventListener('pointermove', move)
      mark.removeEventListener('pointerup', stop)
      mark.removeEventListener('pointercancel', stop)
      plan!.zones[aim]?.cell.classList.remove('aim')
      if (last.type === 'pointerup' && line!.zones[aim] !== row.text()) row.choose(line!.zones[aim]!)
      else follow()
    }
    mark.addEventListener('pointermove', move)
    mark.addEventListener('pointerup', stop)
    mark.addEventListener('pointercancel', stop)
  }

  function follow(): void {
    if (plan === null || line === null) return
    for (const { mark, row } of handles) {
      const zone = line.zones.indexOf(row.text())
      if (zone < 0) continue
      const spot = plan.signSpot(zone, RADIUS)
      mark.setAttribute('transform', `translate(${spot.x.toFixed(1)} ${spot.y.toFixed(1)})`)
      mark.classList.toggle('moved', row.text() !== row.input.file)
      for (const [key, value] of Object.entries({ min: 0, max: line.zones.length - 1, now: zone, text: line.zones[zone]! }))
        mark.setAttribute(`aria-value${key}`, String(value))
    }
  }

  holder?.closest('details')?.addEventListener('toggle', draw)
  return {
    draw: (found) => {
      line ??= found
      draw()
    },
    follow,
  }
}

const far = (spot: { readonly x: number; readonly y: number }, x: number, y: number): number => Math.hypot(spot.x - x, spot.y - y)
