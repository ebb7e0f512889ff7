/** Standard input in the place of a file: what other commands call `-`. */
import { Misuse, Stopped } from './shell.ts'

/** What is typed for it. */
const DASH = '-'

/** What it is called in messages, and in the place of a file name ever after. */
export const STDIN = '<stdin>'

/** The files that were typed, `-` by the name of standard input. */
export const typedFiles = (typed: readonly string[]): string[] => typed.map((file) => (file === DASH ? STDIN : file))

/** A stream of bytes, as Node has it. */
export interface InputStream extends AsyncIterable<Uint8Array> {
  readonly isTTY?: boolean
  readonly destroy: () => unknown
}

/**
 * What comes in there, to its end; read once, and the same for whoever asks again.
 *
 * @param told    where it is a terminal: how to end it
 * @param signal  Ctrl-C
 */
export function standardInput(
  stream: () => InputStream,
  told: (text: string) => void,
  signal: AbortSignal,
): (most: number) => Promise<Buffer> {
  let read: Promise<Buffer> | null = null
  return (most) => (read ??= bytesOf(stream(), most, told, signal))
}

/**
 * @throws Misuse   where there is more than `most`
 * @throws Stopped  at a Ctrl-C
 */
async function bytesOf(stream: InputStream, most: number, told: (text: string) => void, signal: AbortSignal): Promise<Buffer> {
  if (stream.isTTY === true) told('reading from the keyboard; Ctrl-D on a line of its own ends it\n')
  const stop = (): void => void stream.destroy()
  signal.addEventListener('abort', stop, { once: true })
  const parts: Uint8Array[] = []
  let length = 0
  try {
    for await (const part of stream) {
      length += part.length
      if (length > most) throw new Misuse(`more than ${most / 2 ** 20} MB came in by standard input; that is no text of people`)
      parts.push(part)
    }
  } catch (error) {
    if (!signal.aborted) throw error
  } finally {
    signal.removeEventListener('abort', stop)
  }
  if (signal.aborted) throw new Stopped('stopped while standard input was read: nothing was run')
  return Buffer.concat(parts)
}
