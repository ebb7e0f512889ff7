/** The engine's mark: two engines that might give other numbers have different ones. */
import { createHash } from 'node:crypto'
import { arch, versions } from 'node:process'
import { stream } from '@loopwright/stats'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'
import { engineCode } from './engineCode.ts'

let mark: string | null = null

/**
 * Version, and a digest of the code that makes the numbers: while the engine is worked on its version stays, its results do not.
 * V8 and the kind of processor are part of it, since they decide the last bit of logarithms; so is what the generator of random numbers gives, which comes from a library.
 *
 * @example engineMark().slice(0, 6) // => '0.1.0-'
 * @returns  such as `0.1.0-3f2a09c1d4e5b6a7`; a name for a folder
 */
export function engineMark(): string {
  mark ??= markWith(stream('mark', 0, 'mark'))
  return mark
}

/** @param next  first numbers of a stream, by the generator that there is */
export function markWith(next: () => number): string {
  const drawn = Array.from({ length: 16 }, next).join(' ')
  const hash = createHash('sha256').update(`${versions.v8} ${arch}\n${drawn}\n${engineCode()}`)
  return `${ENGINE_VERSION}-${hash.digest('hex').slice(0, 16)}`
}
