/** What happened, in words: one entry for each thing that MODEL.md names. */
import type { Position } from '@loopwright/line'
import type { Gait } from './motion.ts'

export type Duty = 'unload' | 'load' | 'work'

export type LogEntry = { readonly t: number } & (
  | { readonly what: 'move start'; readonly path: number; readonly zone: number; readonly carrier: number; readonly from: Gait }
  | { readonly what: 'clear'; readonly zone: number; readonly carrier: number }
  | { readonly what: 'pass' | 'brake' | 'at rest'; readonly zone: number; readonly carrier: number }
  | {
      readonly what: 'duty start' | 'duty end'
      readonly zone: number
      readonly carrier: number
      readonly station: number
      readonly duty: Duty
    }
  | { readonly what: 'release start' | 'release end'; readonly zone: number; readonly carrier: number; readonly station: number }
  | { readonly what: 'change start'; readonly zone: number; readonly to: Position; readonly why: 'out' | 'back' | 'in' }
  | { readonly what: 'change end'; readonly zone: number; readonly to: Position }
  | { readonly what: 'stop begin' | 'stop end' | 'repair start'; readonly source: number }
  /** `source`: past the breakdowns, by station that has one */
  | { readonly what: 'safety stop begin' | 'safety stop end'; readonly station: number; readonly source: number }
  | { readonly what: 'break begin' | 'break end' }
  | { readonly what: 'load'; readonly zone: number; readonly carrier: number; readonly serial: number; readonly variant: number }
  | { readonly what: 'unload'; readonly zone: number; readonly carrier: number; readonly serial: number; readonly rejected: boolean }
  | { readonly what: 'reject'; readonly zone: number; readonly carrier: number; readonly station: number; readonly serial: number }
  | { readonly what: 'operator sent' | 'operator there' | 'operator free'; readonly station: number; readonly operator: number }
  | { readonly what: 'push start' | 'push end'; readonly operator: number; readonly carrier: number }
  /** `before`: how many have come to this supply before; `queue`: how many are in it now */
  | { readonly what: 'product arrival'; readonly supply: number; readonly number: number; readonly before: number; readonly queue: number }
  | { readonly what: 'turned away'; readonly supply: number; readonly number: number; readonly before: number }
  | { readonly what: 'taken from queue'; readonly supply: number; readonly waited: number }
  | { readonly what: 'receiver start' | 'receiver end'; readonly station: number }
  | { readonly what: 'ended'; readonly reason: string }
)

/** One entry as people would say it: `3 c0 passes Z1` */
export function say(entry: LogEntry): string {
  return `${entry.t} ${predicate(entry)}`
}

function predicate(entry: LogEntry): string {
  switch (entry.what) {
    case 'move start':
      return `c${entry.carrier} leaves Z${entry.zone} from ${entry.from}`
    case 'clear':
      return `Z${entry.zone} clear`
    case 'pass':
      return `c${entry.carrier} passes Z${entry.zone}`
    case 'brake':
      return `c${entry.carrier} brakes into Z${entry.zone}`
    case 'at rest':
      return `c${entry.carrier} at rest in Z${entry.zone}`
    case 'duty start':
      return `S${entry.station} starts ${entry.duty} on c${entry.carrier}`
    case 'duty end':
      return `S${entry.station} ends ${entry.duty} on c${entry.carrier}`
    case 'release start':
      return `S${entry.station} starts release of c${entry.carrier}`
    case 'release end':
      return `S${entry.station} releases c${entry.carrier}`
    case 'change start':
      return `Z${entry.zone} changes to ${entry.to}`
    case 'change end':
      return `Z${entry.zone} stands ${entry.to}`
    case 'repair start':
      return `repair of stop ${entry.source} starts`
    case 'safety stop begin':
      return `safety stop of S${entry.station} begins`
    case 'safety stop end':
      return `safety stop of S${entry.station} ends`
    case 'reject':
      return `S${entry.station} rejects product ${entry.serial}`
    case 'operator sent':
      return `operator ${entry.operator} sets off to S${entry.station}`
    case 'operator there':
      return `operator ${entry.operator} is at S${entry.station}`
    case 'operator free':
      return `operator ${entry.operator} is free`
    case 'push start':
      return `operator ${entry.operator} starts to push c${entry.carrier}`
    case 'push end':
      return `operator ${entry.operator} has pushed c${entry.carrier}`
    case 'product arrival':
      return `a product comes to supply ${entry.supply}`
    case 'turned away':
      return `a product is turned away from supply ${entry.supply}`
    case 'taken from queue':
      return `a product leaves the queue of supply ${entry.supply}`
    case 'receiver start':
      return `receiver of S${entry.station} starts`
    case 'receiver end':
      return `receiver of S${entry.station} ends`
    case 'stop begin':
      return `stop ${entry.source} begins`
    case 'stop end':
      return `stop ${entry.source} ends`
    case 'break begin':
      return 'break begins'
    case 'break end':
      return 'break ends'
    case 'load':
      return `c${entry.carrier} takes product ${entry.serial}`
    case 'unload':
      return `product ${entry.serial} off c${entry.carrier}`
    case 'ended':
      return entry.reason
  }
}
