/** What two machines must have alike to work for each other: the code of the engine, and the bits of its numbers. Their Node and processor need not be. */
import { arch, platform, version } from 'node:process'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'
import { engineCode } from '../store/engineCode.ts'
import { checkDigest } from './checkRuns.ts'

let mark: string | null = null

/**
 * Version, digest of the code, digest of the check runs.
 *
 * @returns such as `0.1.0-3f2a09c1d4e5b6a7-91c0d2e4`
 */
export function workMark(): string {
  mark ??= `${ENGINE_VERSION}-${engineCode()}-${checkDigest()}`
  return mark
}

/** This Node and processor, in words. */
export const machineWords = (): string => `Node ${version}, ${platform} ${arch}`

/**
 * Why two cannot work for each other; null where they can.
 *
 * @example whyRefused('0.1.0-aa-11', '0.1.0-aa-22') // => 'its Node or processor gives other last digits in the check runs'
 */
export function whyRefused(mine: string, other: string): string | null {
  if (mine === other) return null
  const codeOf = (one: string): string => one.slice(0, one.lastIndexOf('-'))
  return codeOf(mine) === codeOf(other)
    ? 'its Node or processor gives other last digits in the check runs'
    : 'it has another version of the engine, whose numbers may be others'
}
