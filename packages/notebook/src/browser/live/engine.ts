/** The worker behind a page: one at a time, made anew where it does not hear. */
import type { LiveValues } from '../../live/liveChanges.ts'
import type { LiveAsk, LiveSetting } from '../../live/liveTold.ts'
import type { LiveData } from '../../page/pageData.ts'
import { unpacked } from '../readData.ts'
import type { FromEngine, ToEngine } from './protocol.ts'

export interface Engine {
  /** Starts the worker, if it is not there yet. */
  start(): void
  /** Simulates settings; whatever was asked before ends. */
  ask(settings: LiveAsk['settings']): void
  keep(setting: LiveSetting, replications: number): void
  /** One run of a setting, to be watched; whatever was watched before ends. */
  watch(values: LiveValues, replication: number): void
  /** The timeline of the run that is watched. */
  stretch(fromSeconds: number, toSeconds: number): void
}

/** A worker in the midst of a run hears nothing; after so many milliseconds it gives way to a new one. */
const DEAF_MS = 4000

/**
 * @param hear  is told what the last wish gave; nothing of older ones
 */
export function engineOf(data: LiveData, hear: (message: FromEngine) => void): Engine {
  let address: Promise<string> | null = null
  let worker: Promise<Worker> | null = null
  let id = 0
  let timer: ReturnType<typeof setTimeout> | undefined
  let wish: LiveAsk | null = null
  let watch = 0
  /** what is to be kept of the last wish, until it is: a worker that gives way takes it along */
  let keeping: Extract<ToEngine, { kind: 'keep' }> | null = null
  /** a run that is awaited */
  let look: Extract<ToEngine, { kind: 'watch' }> | null = null

  const start = (): Promise<Worker> => {
    // one address for all workers of the page
    address ??= unpacked('page-engine').then((code) => URL.createObjectURL(new Blob([code], { type: 'text/javascript' })))
    worker ??= address.then((url) => {
      const made = new Worker(url)
      made.onmessage = ({ data: message }: MessageEvent<FromEngine>) => {
        if ('id' in message && message.id !== id) return
        if ('watch' in message && message.watch !== watch) return
        if (message.kind === 'kept') keeping = null
        if (message.kind === 'watched' || message.kind === 'not watched') look = null
        if (message.kind === 'begun') clearTimeout(timer)
        else hear(message)
      }
      made.onerror = (event) => {
        event.preventDefault()
        hear({ kind: 'failed', message: event.message ?? 'the worker of this page could not start' })
      }
      post(made, { kind: 'open', data })
      return made
    })
    return worker
  }
  const send = (message: ToEngine): void => {
    start().then(
      (made) => post(made, message),
      (error: unknown) => hear({ kind: 'failed', message: error instanceof Error ? error.message : String(error) }),
    )
  }
  const restart = (): void => {
    void worker?.then((made) => made.terminate())
    worker = null
    if (wish !== null) send({ kind: 'ask', ask: wish })
    if (keeping !== null) send(keeping)
    if (look !== null) send(look)
  }
  return {
    start: () => void start().catch(() => {}),
    ask(settings) {
      id += 1
      const now = { id, settings }
      wish = now
      keeping = null
      clearTimeout(timer)
      start().then(
        () => {
          if (wish === now) timer = setTimeout(restart, DEAF_MS)
        },
        () => {},
      )
      send({ kind: 'ask', ask: now })
    },
    keep(setting, replications) {
      keeping = { kind: 'keep', setting, replications }
      send(keeping)
    },
    watch(values, replication) {
      watch += 1
      look = { kind: 'watch', id: watch, values, replication }
      send(look)
    },
    stretch: (fromSeconds, toSeconds) => send({ kind: 'stretch', id: watch, fromSeconds, toSeconds }),
  }
}

const post = (worker: Worker, message: ToEngine): void => worker.postMessage(message)
