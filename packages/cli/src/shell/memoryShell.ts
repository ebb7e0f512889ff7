/** A shell that keeps in memory what is said and written; for the tests of this package, no part of what is built. */
import { visibleStyled } from '@loopwright/charts'
import { memoryStore } from '@loopwright/study'
import { Failure, Misuse, type Shell } from './shell.ts'

export interface MemoryShell extends Shell {
  readonly said: { out: string; err: string }
  readonly files: Map<string, string>
  /** pages that were opened */
  readonly opened: string[]
  clock: number
}

export interface MemoryShellOptions {
  /** standard error is a terminal. Default: false */
  readonly terminal?: boolean
  /** on both streams. Default: false */
  readonly colour?: boolean
  /** of both streams. Default: 80 */
  readonly columns?: number
  /** there is something that opens pages. Default: true */
  readonly browser?: boolean
}

export function memoryShell(
  files: Readonly<Record<string, string>> = {},
  { terminal = false, colour = false, columns = 80, browser = true }: MemoryShellOptions = {},
): MemoryShell {
  const said = { out: '', err: '' }
  const kept = new Map(Object.entries(files))
  const store = memoryStore()
  const shell: MemoryShell = {
    said,
    files: kept,
    opened: [],
    clock: 0,
    out: {
      write: (text) => {
        said.out += visibleStyled(text)
      },
      isTerminal: false,
      colour,
      columns,
    },
    err: {
      write: (text) => {
        said.err += visibleStyled(text)
      },
      isTerminal: terminal,
      colour,
      columns,
    },
    readFile: async (path) => {
      const text = kept.get(path)
      if (text === undefined) throw new Misuse(`there is no file "${path}" here`)
      return text
    },
    readBeside: (_, path) => kept.get(path) ?? null,
    writeFile: async (path, text) => void kept.set(path, text),
    checkWritable: async (path) => {
      if (path.startsWith('closed/')) throw new Failure(`"${path}" cannot be written: you may not write or read there`)
    },
    importModule: async (path) => {
      throw new Misuse(`there is no file "${path}" here`)
    },
    openPage: async (path) => {
      if (browser) shell.opened.push(path)
      return browser
    },
    openStore: async () => store,
    now: () => shell.clock,
    today: () => new Date('2026-01-05T08:00:00Z'),
    signal: new AbortController().signal,
  }
  return shell
}

/** A loop of ten zones with ramps, one random time, a stop and a calendar. */
export const SMALL_LINE = `format: 1
question: Does the small loop make 70 a shift?
name: Small loop
plan: 70 per shift
calendar:
  shift: { from: "06:00", to: "08:00", perDay: 2 }
  breaks: [{ after: 60 min, lasts: 10 min }]
  judge: second shift
drive: { speed: 12 m/min, acceleration: 0.5 m/s², reaction: 0.1 s, release: single }
carriers: { count: 4, length: 0.8 m, width: 0.8 m }
loop: 10 zones of 1 m
stations:
  A: { name: Load, zone: Z01, load: { place: 20 s } }
  B: { name: Fit, zone: Z05, work: { fit: 70 s ± 15 % } }
  C: { name: Unload, zone: Z08, unload: { take: 15 s } }
stops:
  jam: { at: B, after: exponential 60 min, lasts: exponential 2 min }
`

/** Constant times, no ramps: the law of the loop is exact. */
export const EXACT_LINE = `format: 1
question: What does the law say?
name: Exact loop
warmup: 10 min
length: 1 h
drive: { speed: 12 m/min, reaction: 0.1 s, release: single }
carriers: { count: 4, length: 0.8 m, width: 0.8 m }
loop: 10 zones of 1 m
stations:
  A: { name: Load, zone: Z01, load: { place: 20 s } }
  B: { name: Unload, zone: Z06, unload: { take: 15 s } }
`
