/** Events of a run in plain words, one line each. */
import type { TraceKind } from '@loopwright/line'

/** An event with names and words in place of numbers. */
export interface TraceEvent {
  /** from time 0 */
  readonly seconds: number
  readonly event: TraceKind
  /** name of the zone (of a move: the zone it leaves), station, breakdown source, safety stop or supply; null for breaks and standstill */
  readonly place: string | null
  /** of a move: name of the zone it leads to, or `store`; else null */
  readonly to: string | null
  /** number of the carrier; null where there is none */
  readonly carrier: number | null
  /** `from rest`, `at speed`; the duty; `to the way out`, `back`, `to the way in`; the serial number; of products how many came before; the operator; else null */
  readonly detail: string | number | null
}

/** columns of the terminal */
const COLUMNS = 80

/**
 * Time since the start of the run, to the millisecond.
 *
 * @example runClockText(3661.25) // => '1:01:01.250'
 */
export function runClockText(seconds: number): string {
  const milliseconds = Math.round(seconds * 1000)
  const part = (of: number, digits: number): string => String(of).padStart(digits, '0')
  const whole = Math.floor(milliseconds / 1000)
  return `${Math.floor(whole / 3600)}:${part(Math.floor(whole / 60) % 60, 2)}:${part(whole % 60, 2)}.${part(milliseconds % 1000, 3)}`
}

/**
 * One event as a line of at most 80 characters: time, carrier, what happened.
 *
 * @example traceLine({ seconds: 12.5, event: 'load', place: 'S1', to: null, carrier: 1, detail: 0 }).trim() // => '0:00:12.500        1  takes product 0 in S1'
 */
export function traceLine(event: TraceEvent): string {
  const carrier = event.carrier === null ? '' : `${event.carrier}`
  return `${runClockText(event.seconds).padStart(12)}  ${carrier.padStart(7)}  ${sentence(event)}`.slice(0, COLUMNS)
}

/** Heads of the columns of `traceLine`. */
export const TRACE_HEAD = `${'Time'.padStart(12)}  Carrier  Event`

function sentence({ event, place, to, detail }: TraceEvent): string {
  switch (event) {
    case 'move start':
      return `leaves ${place} for ${to}${detail === 'at speed' ? ', at speed' : ''}`
    case 'clear':
      return `${place} is clear`
    case 'look':
      return `comes to ${place}, looks whether it can go on`
    case 'brake':
      return `cannot go on, brakes in ${place}`
    case 'rest':
      return `stands in ${place}`
    case 'duty start':
      return `${place} begins to ${detail}`
    case 'duty end':
      return `${place} has done its ${detail}`
    case 'release start':
      return `${place}: the operator goes to release it`
    case 'release end':
      return `${place}: released`
    case 'change start':
      return `the transfer in ${place} turns ${detail}`
    case 'change end':
      return `the transfer in ${place} has turned ${detail}`
    case 'load':
      return `takes product ${detail} in ${place}`
    case 'unload':
      return `product ${detail} is taken off in ${place}`
    case 'stop begin':
      return `${place}: stopped`
    case 'stop end':
      return `${place}: goes on`
    case 'break begin':
      return 'a break begins'
    case 'break end':
      return 'the break is over'
    case 'standstill':
      return 'the line stands still for good'
    case 'operator sent':
      return `${place}: ${detail} is sent there`
    case 'operator there':
      return `${place}: ${detail} is there`
    case 'operator free':
      return `${place}: ${detail} is free`
    case 'product arrival':
      return `product ${detail} comes to ${place}`
    case 'turned away':
      return `product ${detail} is turned away from ${place}: the queue is full`
    case 'receiver start':
      return `${place}: its receiver begins`
    case 'receiver end':
      return `${place}: its receiver is done`
    case 'reject':
      return `product ${detail} is rejected in ${place}`
    case 'repair start':
      return `${place}: the repair begins`
  }
}
