/** The engine's mark: two engines that might give other numbers have different ones. */
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { arch, versions } from 'node:process'
import { fileURLToPath } from 'node:url'
import { stream } from '@loopwright/stats'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'

/** packages whose code decides what a row holds */
const PACKAGES = ['kernel', 'stats', 'line', 'study']
/** put in when the code is bundled: the digest of these packages as they were written */
declare const ENGINE_CODE: string | undefined
const CODE = /(?<!\.test|\.d)\.[jt]s$/

let mark: string | null = null

/**
 * Version, and a digest of the code that makes the numbers: while the engine is worked on its version stays, its results do not.
 * V8 and the kind of processor are part of it, since they decide the last bit of logarithms; so is what the generator of random numbers gives, which comes from a library.
 *
 * @example engineMark().slice(0, 6) // => '0.1.0-'
 * @returns  such as `0.1.0-3f2a09c1d4e5b6a7`; a name for a folder
 */
export function engineMark(): string {
  if (mark !== null) return mark
  const hash = createHash('sha256').update(`${versions.v8} ${arch}\n${drawn()}\n`)
  if (typeof ENGINE_CODE === 'string') hash.update(ENGINE_CODE)
  else for (const file of codeFiles()) hash.update(readFileSync(file))
  mark = `${ENGINE_VERSION}-${hash.digest('hex').slice(0, 16)}`
  return mark
}

/** First numbers of a stream. */
function drawn(): string {
  const next = stream('mark', 0, 'mark')
  return Array.from({ length: 16 }, next).join(' ')
}

/** In the order of packages and names. */
function codeFiles(): string[] {
  return PACKAGES.flatMap((name) => {
    const folder = name === 'study' ? dirname(dirname(fileURLToPath(import.meta.url))) : folderOf(name)
    return readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((file) => CODE.test(file))
      .sort()
      .map((file) => join(folder, file))
  })
}

const folderOf = (name: string): string => dirname(fileURLToPath(import.meta.resolve(`@loopwright/${name}`)))
