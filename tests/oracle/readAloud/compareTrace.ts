/** The engine's trace and the log of the reading aloud, laid side by side. */
import { TRACE_KINDS, type Trace } from '@loopwright/line'
import type { LogEntry } from './eventLog.ts'

const DUTIES = ['unload', 'load', 'work']
const CHANGES = ['out', 'back', 'in']

interface Line {
  readonly t: number
  readonly text: string
}

/** The first instants at which the two say different things; empty: none. The order within an instant is free. */
export function compareTrace(trace: Trace, log: readonly LogEntry[]): string[] {
  const engine = sorted(fromTrace(trace))
  const aloud = sorted(log.flatMap(fromLog))
  const differences: string[] = []
  for (let k = 0; k < Math.max(engine.length, aloud.length) && differences.length < 5; k++) {
    if (engine[k] !== aloud[k]) differences.push(`trace entry ${k}: engine "${engine[k]}", aloud "${aloud[k]}"`)
  }
  return differences
}

function sorted(lines: Line[]): string[] {
  return lines.sort((a, b) => a.t - b.t || (a.text < b.text ? -1 : a.text > b.text ? 1 : 0)).map((line) => `${line.t} ${line.text}`)
}

function fromTrace(trace: Trace): Line[] {
  const lines: Line[] = []
  const braked = new Set<string>()
  for (let k = 0; k < trace.length; k++) {
    if (TRACE_KINDS[trace.kinds[k]!] === 'brake') braked.add(`${trace.seconds[k]} ${trace.carriers[k]}`)
  }
  for (let k = 0; k < trace.length; k++) {
    const kind = TRACE_KINDS[trace.kinds[k]!]!
    const [t, place, carrier, detail] = [trace.seconds[k]!, trace.places[k]!, trace.carriers[k]!, trace.details[k]!]
    // the trace enters a look, and a brake if it then can not go on
    if (kind === 'look' && braked.has(`${t} ${carrier}`)) continue
    lines.push({ t, text: inWords(kind, place, carrier, detail) })
  }
  return lines
}

function inWords(kind: string, place: number, carrier: number, detail: number): string {
  switch (kind) {
    case 'clear':
    case 'change end':
    case 'stop begin':
    case 'stop end':
    case 'repair start':
    case 'receiver start':
    case 'receiver end':
      return `${kind} ${place}`
    case 'change start':
      return `${kind} ${place} ${CHANGES[detail]}`
    case 'operator sent':
    case 'operator there':
      return `${kind} ${place} o${detail}`
    case 'operator free':
      return `${kind} o${detail}`
    case 'product arrival':
    case 'turned away':
      return `${kind} ${place} number ${detail}`
    case 'reject':
      return `${kind} c${carrier} product ${detail}`
    case 'break begin':
    case 'break end':
    case 'standstill':
      return kind
    case 'move start':
      return `${kind} ${place} c${carrier} from ${detail === 0 ? 'rest' : 'speed'}`
    case 'duty start':
    case 'duty end':
      return `${kind} ${place} c${carrier} ${DUTIES[detail]}`
    case 'load':
    case 'unload':
      return `${kind} ${place} c${carrier} product ${detail}`
    default:
      return `${kind} ${place} c${carrier}`
  }
}

function fromLog(entry: LogEntry): Line[] {
  const line = (place: number, carrier: number, detail = 0, kind: string = entry.what): Line[] => [
    { t: entry.t, text: inWords(kind, place, carrier, detail) },
  ]
  switch (entry.what) {
    case 'move start':
      return line(entry.path, entry.carrier, entry.from === 'rest' ? 0 : 1)
    case 'pass':
      return line(entry.zone, entry.carrier, 0, 'look')
    case 'clear':
    case 'brake':
      return line(entry.zone, entry.carrier)
    case 'at rest':
      return line(entry.zone, entry.carrier, 0, 'rest')
    case 'duty start':
    case 'duty end':
      return line(entry.station, entry.carrier, DUTIES.indexOf(entry.duty))
    case 'release start':
    case 'release end':
      return line(entry.station, entry.carrier)
    case 'change start':
      return line(entry.zone, -1, CHANGES.indexOf(entry.why))
    case 'change end':
      return line(entry.zone, -1)
    case 'load':
    case 'unload':
      return line(entry.zone, entry.carrier, entry.serial)
    case 'stop begin':
    case 'stop end':
    case 'repair start':
      return line(entry.source, -1)
    case 'safety stop begin':
      return line(entry.source, -1, 0, 'stop begin')
    case 'safety stop end':
      return line(entry.source, -1, 0, 'stop end')
    case 'break begin':
    case 'break end':
      return line(-1, -1)
    case 'reject':
      return line(entry.station, entry.carrier, entry.serial)
    case 'operator sent':
    case 'operator there':
    case 'operator free':
      return line(entry.station, -1, entry.operator)
    case 'product arrival':
    case 'turned away':
      return line(entry.number, -1, entry.before)
    case 'receiver start':
    case 'receiver end':
      return line(entry.station, -1)
    case 'push start':
    case 'push end':
    case 'taken from queue':
      return []
    case 'ended':
      return entry.reason === 'end of window' ? [] : line(0, -1, 0, 'standstill')
  }
}
