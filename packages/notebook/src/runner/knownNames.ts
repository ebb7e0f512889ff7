/** Misspelt names in what a notebook asks for: told with the nearest right one, never passed over. */
import { listWords } from '@loopwright/line'
import { nearest } from '@loopwright/scenario'
import { Mistake } from '../load/fault.ts'

/**
 * Refuses names that nobody reads.
 *
 * @param what   whose names, such as `sweep`
 * @param given  as the notebook wrote it; undefined: nothing
 * @throws Mistake  with all that are not known
 */
export function checkNames(what: string, given: unknown, known: readonly string[]): void {
  if (given === undefined) return
  const all = `${what} takes ${listWords(known)}.`
  if (typeof given !== 'object' || given === null || Array.isArray(given))
    throw new Mistake(`${what} takes an object with named values, not ${shown(given)}`, all)
  const wrong = Object.keys(given).filter((name) => !known.includes(name))
  if (wrong.length === 0) return
  const near = wrong.flatMap((name) => nearest(name, known) ?? [])
  throw new Mistake(
    `${what} knows nothing called ${listWords(wrong.map((name) => `"${name}"`))}`,
    near.length === 0 ? all : `Did you mean ${listWords(near.map((name) => `"${name}"`))}? ${all}`,
    wrong[0],
  )
}

/** The same object, which says so when it is asked for what it has not. */
export function withKnownNames<T extends object>(what: string, object: T): T {
  return new Proxy(object, {
    get: (target, name, receiver) => {
      // `await` asks everything whether it is a promise
      if (typeof name === 'string' && name !== 'then' && !(name in target)) {
        const known = Object.keys(target)
        const near = nearest(name, known)
        throw new Mistake(
          `${what} has nothing called "${name}"`,
          near === null ? `It has ${listWords(known)}.` : `Did you mean "${near}"?`,
          name,
        )
      }
      return Reflect.get(target, name, receiver)
    },
  })
}

/** A value as a sentence may hold it. */
export function shown(value: unknown): string {
  if (typeof value === 'function') return 'a function'
  if (typeof value === 'string') return JSON.stringify(value.length > 40 ? `${value.slice(0, 39)}…` : value)
  return Array.isArray(value) ? 'a list' : typeof value === 'object' && value !== null ? 'an object' : String(value)
}
