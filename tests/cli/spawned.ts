/** The real command, in a process of its own. */
import { spawn } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { TOP } from '../tidy/sources.ts'

export const BIN = join(TOP, 'packages/cli/bin/loopwright.js')
export const DEMO = 'scenarios/outdoor-unit-base-line.yaml'

export interface Ended {
  /** as a shell tells it: 130 of what an interrupt has ended by itself */
  readonly code: number | null
  readonly out: string
  readonly err: string
}

export interface Spawned {
  readonly ended: Promise<Ended>
  readonly interrupt: () => void
  /** resolves when standard error has said this */
  readonly saidOnErr: (text: string) => Promise<void>
  /** resolves when standard output has said this; with all that it has said */
  readonly saidOnOut: (text: string) => Promise<string>
}

/** commands that keep their runs */
const KEEPING = ['run', 'sweep', 'carriers', 'compare', 'grid', 'drivers', 'losses', 'order', 'forecast', 'notebook']

/** They do them afresh, unless they name a store of their own, or are only asked for help. */
const fresh = (words: readonly string[]): string[] =>
  KEEPING.includes(words[0] ?? '') && !['--store', '--fresh', '--help'].some((word) => words.includes(word)) ? ['--fresh'] : []

/** They take one thread, which takes most of a second to start, unless they say how many. */
const oneThread = (words: readonly string[]): readonly string[] =>
  KEEPING.includes(words[0] ?? '') && !['--workers', '--help'].some((word) => words.includes(word)) ? ['--workers', '1'] : []

/**
 * @param folder  working folder; default: the top of the project
 * @param input   comes in by standard input; default: there is none
 */
export function start(words: readonly string[], folder = TOP, input: string | null = null): Spawned {
  const child = spawn(process.execPath, [BIN, ...words, ...fresh(words), ...oneThread(words)], {
    cwd: folder,
    stdio: [input === null ? 'ignore' : 'pipe', 'pipe', 'pipe'],
  })
  child.stdin?.end(input)
  const said = { out: '', err: '' }
  const waiting: { text: string; done: () => void }[] = []
  const outs: { text: string; done: (all: string) => void }[] = []
  child.stdout!.setEncoding('utf8').on('data', (text: string) => {
    said.out += text
    for (const one of outs) if (said.out.includes(one.text)) one.done(said.out)
  })
  child.stderr!.setEncoding('utf8').on('data', (text: string) => {
    said.err += text
    for (const one of waiting) if (said.err.includes(one.text)) one.done()
  })
  return {
    ended: new Promise((resolve) => child.on('close', (code, signal) => resolve({ code: signal === 'SIGINT' ? 130 : code, ...said }))),
    interrupt: () => child.kill('SIGINT'),
    saidOnErr: (text) =>
      new Promise((done) => {
        waiting.push({ text, done })
        if (said.err.includes(text)) done()
      }),
    saidOnOut: (text) =>
      new Promise((done) => {
        outs.push({ text, done })
        if (said.out.includes(text)) done(said.out)
      }),
  }
}

export const loopwright = (...words: string[]): Promise<Ended> => start(words).ended

/** Files of kept runs in a store. */
export const runFiles = (store: string): number =>
  readdirSync(store, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.runs')).length
