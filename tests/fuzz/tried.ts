/** One spoilt text for one reader, made from its number alone. */
import { mutated, one, wholeOf } from './mutated.ts'
import { READERS } from './readers.ts'

export interface Finding {
  readonly reader: string
  readonly number: number
  readonly what: string
  readonly text: string
}

/** milliseconds of work that a reader may take for one text; how long others keep the machine busy meanwhile is not counted */
const WORK_MAX = 1000
/** of what simulates: it may go on until it is told to stop and then has a second */
const STOPPED_WORK_MAX = 2000
const STOPPED = ['command line', 'what is told of a scenario', 'what is told of a decision', 'address of a page']
/** a text that took longer is read again: what the process collects of others may fall due in one reading, not in each */
const TIMES = 3
/** of the process, bytes: more would be kept from text to text, or taken by one */
const MEMORY_MAX = 2 * 2 ** 30

/** What all objects share, as it was when nothing had been read yet. */
const SHARED = [Object, Array, Function, String, Number, Promise, Map, RegExp, Uint8Array].map(({ prototype }) => prototype as object)
const sharedNow = (): string => SHARED.map((each) => Reflect.ownKeys(each).map(String).join()).join('\n')
const BEFORE = sharedNow()

export function textOf(reader: string, number: number): string {
  const { texts, spoil } = READERS[reader]!
  const whole = wholeOf(number)
  return spoil === null ? mutated(one(texts, whole), texts, whole) : spoil(whole)
}

/** null: nothing is wrong */
export async function tried(reader: string, number: number): Promise<Finding | null> {
  const text = textOf(reader, number)
  const found = (what: string): Finding => ({ reader, number, what, text: text.slice(0, 4000) })
  const most = STOPPED.includes(reader) ? STOPPED_WORK_MAX : WORK_MAX
  let took = Number.POSITIVE_INFINITY
  for (let time = 0; time < TIMES && took > most; time += 1) {
    const start = process.cpuUsage()
    try {
      const what = await READERS[reader]!.try(text)
      if (what !== null) return found(what)
    } catch (error) {
      return found(`an error is thrown: ${(error as Error).stack}`)
    }
    const { user, system } = process.cpuUsage(start)
    took = Math.min(took, (user + system) / 1000)
  }
  if (took > most) return found(`it took ${took.toFixed(0)} ms of work`)
  if (sharedNow() !== BEFORE) return found('it changed what all objects share')
  const used = process.memoryUsage.rss()
  if (used > MEMORY_MAX) return found(`it took ${(used / 2 ** 20).toFixed(0)} MB`)
  return null
}
