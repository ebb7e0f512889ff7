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
/** of a command, which may go on until it is told to stop and then has a second */
const COMMAND_MAX = 2000

const SHARED = Object.getOwnPropertyNames(Object.prototype).length

export function textOf(reader: string, number: number): string {
  const { texts, spoil } = READERS[reader]!
  const whole = wholeOf(number)
  return spoil === null ? mutated(one(texts, whole), texts, whole) : spoil(whole)
}

/** null: nothing is wrong */
export async function tried(reader: string, number: number): Promise<Finding | null> {
  const text = textOf(reader, number)
  const found = (what: string): Finding => ({ reader, number, what, text: text.slice(0, 4000) })
  const start = process.cpuUsage()
  try {
    const what = await READERS[reader]!.try(text)
    if (what !== null) return found(what)
  } catch (error) {
    return found(`an error is thrown: ${(error as Error).stack}`)
  }
  const { user, system } = process.cpuUsage(start)
  const took = (user + system) / 1000
  if (took > (reader === 'scenario' || reader.startsWith('entry') ? WORK_MAX : COMMAND_MAX))
    return found(`it took ${took.toFixed(0)} ms of work`)
  if (Object.getOwnPropertyNames(Object.prototype).length !== SHARED) return found('it changed what all objects share')
  return null
}
