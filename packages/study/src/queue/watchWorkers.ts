/** Tells who works for a study, and who cannot. */
import type { Present } from './registry.ts'
import { machineWords, whyRefused } from './workMark.ts'

/** milliseconds between two looks at who is there */
const WATCH_MS = 3000

interface Watch {
  readonly mark: string
  readonly name: string
  readonly say: (sentence: string) => void
  readonly waits: () => boolean
}

/** Tells who works for the study whenever that changes, and who cannot. */
export function watchWorkers(look: () => Promise<Present[]>, { mark, name, say, waits }: Watch): { readonly end: () => void } {
  let told = ''
  let over = false
  let timer: ReturnType<typeof setTimeout>
  const again = async (): Promise<void> => {
    const sentence = waits()
      ? await look().then(
          (all) => workersWords(all, mark, name),
          () => told,
        )
      : told
    // it may have ended while it looked
    if (over) return
    if (sentence !== told) say(sentence)
    told = sentence
    timer = setTimeout(() => void again(), WATCH_MS)
  }
  timer = setTimeout(() => void again(), 300)
  return {
    end: () => {
      over = true
      clearTimeout(timer)
    },
  }
}

/**
 * Who works at a queue, in a sentence or two.
 *
 * @param all   who is there
 * @param mark  of the engine that asks
 * @param name  of the queue
 */
export function workersWords(all: readonly Present[], mark: string, name: string): string {
  const workers = all.filter(({ kind }) => kind === 'worker')
  const mine = workers.filter((one) => one.mark === mark)
  const threads = mine.reduce((sum, one) => sum + one.threads, 0)
  const first =
    mine.length === 0
      ? `no worker of this engine (${mark}) is at ${name} yet: start loopwright work there or here; the study waits`
      : `${mine.length === 1 ? '1 worker' : `${mine.length} workers`} with ${threads === 1 ? '1 thread' : `${threads} threads`} at ${name}`
  const unlike = mine.filter((one) => one.machine !== machineWords())
  const refused = new Map<string, Present[]>()
  for (const one of workers) {
    const why = whyRefused(mark, one.mark)
    if (why !== null) refused.set(why, [...(refused.get(why) ?? []), one])
  }
  return [
    first,
    ...(unlike.length === 0 ? [] : [`alike to the last bit in the check runs, though not this Node or processor: ${machines(unlike)}`]),
    ...[...refused].map(([why, all]) => `refused, since ${why}: ${machines(all)}`),
  ].join('\n')
}

const NAMED_MAX = 5

const machines = (all: readonly Present[]): string =>
  [...new Set(all.map(({ host, mark, machine }) => `${host}: engine ${mark}, ${machine}`))].slice(0, NAMED_MAX).join('; ')
