/** One entry as a file: a line of text that anybody can read, then the bytes. README.md of this package tells the format. */
import { createHash } from 'node:crypto'
import type { StoreEntry } from './store.ts'

const MARK = 'loopwright-store'
const VERSION = 1
const LINE_END = 10
/** no heading is longer; bytes */
const HEADING_MAX = 400

/** @param key  of hexadecimal digits */
export function entryFile(key: string, entry: StoreEntry): Uint8Array {
  const { from, to, bytes } = entry
  const place = `${key} ${from} ${to} ${bytes.length}`
  const heading = new TextEncoder().encode(`${MARK} ${VERSION} ${place} ${checksum(place, bytes)}\n`)
  const file = new Uint8Array(heading.length + bytes.length)
  file.set(heading)
  file.set(bytes, heading.length)
  return file
}

/** The entry of a file; null where it is damaged, cut off, or belongs elsewhere. */
export function readEntryFile(file: Uint8Array, key: string): StoreEntry | null {
  const end = file.subarray(0, HEADING_MAX).indexOf(LINE_END)
  if (end < 0) return null
  const [mark, version, ofKey, from, to, length, sum, ...rest] = new TextDecoder().decode(file.subarray(0, end)).split(' ')
  const bytes = new Uint8Array(file.subarray(end + 1))
  if (mark !== MARK || version !== String(VERSION) || ofKey !== key || rest.length > 0) return null
  if (Number(length) !== bytes.length || checksum(`${ofKey} ${from} ${to} ${length}`, bytes) !== sum) return null
  return { from: Number(from), to: Number(to), bytes }
}

const checksum = (place: string, bytes: Uint8Array): string => createHash('sha256').update(`${place}\n`).update(bytes).digest('hex')
