import { createHash } from 'node:crypto'
import type { LineSpec } from '@loopwright/line'
import { withCarriers } from '../change/withCarriers.ts'

/**
 * The key of the runs of one line with one number of carriers in the worlds of one seed.
 *
 * @param form  what is kept of each run: `rows`, `results`
 * @returns     64 hexadecimal digits: SHA-256 of the complete specification (names in alphabetical order), seed and form
 */
export function runKey(spec: LineSpec, carriers: number, seed: string, form: string): string {
  const told = JSON.stringify([form, seed, withCarriers(spec, carriers)], (_, value: unknown) => ordered(value))
  return createHash('sha256').update(told).digest('hex')
}

function ordered(value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) return String(value)
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
}
