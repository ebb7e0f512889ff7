import { Readable } from 'node:stream'
import { expect, test } from 'vitest'
import { standardInput, STDIN, typedFiles } from './standardInput.ts'

const never = new AbortController().signal
const silent = (): void => {}
const of = (...parts: string[]) => Readable.from(parts.map((part) => Buffer.from(part)))

test('a dash is standard input, and nothing else is', () => {
  expect(typedFiles(['-', './-', 'line.yaml', '--'])).toEqual([STDIN, './-', 'line.yaml', '--'])
})

test('it is read to its end, once, and is the same for whoever asks again', async () => {
  let opened = 0
  const input = standardInput(
    () => {
      opened += 1
      return of('form', 'at: 1\n')
    },
    silent,
    never,
  )
  expect(opened).toBe(0)
  for (let asked = 0; asked < 2; asked += 1) expect((await input(100)).toString()).toBe('format: 1\n')
  expect(opened).toBe(1)
})

test('more than may come is refused', async () => {
  await expect(standardInput(() => of('x'.repeat(11)), silent, never)(10)).rejects.toMatchObject({ name: 'Misuse' })
})

test('a keyboard is told how to end it, a pipe is not', async () => {
  const said: string[] = []
  const keyboard = Object.assign(of('a'), { isTTY: true })
  await standardInput(
    () => keyboard,
    (text) => said.push(text),
    never,
  )(9)
  expect(said).toEqual([expect.stringContaining('Ctrl-D')])
})

test('Ctrl-C ends it while nothing comes', async () => {
  const stop = new AbortController()
  const endless = new Readable({ read: silent })
  const read = standardInput(() => endless, silent, stop.signal)(9)
  stop.abort()
  await expect(read).rejects.toMatchObject({ name: 'Stopped' })
})
