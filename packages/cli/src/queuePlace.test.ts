import { expect, test } from 'vitest'
import { memoryShell } from '../../../tests/helpers/memoryShell.ts'
import { main } from './main.ts'
import { atQueue, queuePlace, saying } from './queuePlace.ts'
import { Failure, Misuse } from './shell/shell.ts'

const shellWith = (environment: Readonly<Record<string, string>>) => ({
  ...memoryShell({ 'ca.pem': 'CERTIFICATE' }),
  environment: (name: string) => environment[name],
})

test('what lets in comes from the environment alone', async () => {
  expect((await queuePlace(shellWith({}), 'redis://plant')).access).toEqual({ user: null, password: null, authorities: null })
  const all = { LOOPWRIGHT_QUEUE_USER: 'line', LOOPWRIGHT_QUEUE_PASSWORD: 'word', LOOPWRIGHT_QUEUE_CA: 'ca.pem' }
  expect((await queuePlace(shellWith(all), 'rediss://plant')).access).toEqual({
    user: 'line',
    password: 'word',
    authorities: 'CERTIFICATE',
  })
  await expect(queuePlace(shellWith(all), 'redis://plant')).rejects.toThrow(Misuse)
  await expect(queuePlace(shellWith({}), 'plant')).rejects.toThrow(Misuse)
})

test('a word in the address goes into no output', async () => {
  for (const words of [['work'], ['queue', 'info'], ['sweep', 'line.yaml']]) {
    const shell = memoryShell({ 'line.yaml': 'format: 1' })
    expect(await main([...words, '--queue', 'redis://:geheim@plant'], shell)).toBe(2)
    expect(shell.said.err).toContain('LOOPWRIGHT_QUEUE_PASSWORD')
    expect(shell.said.err + shell.said.out).not.toContain('geheim')
  }
})

test('no queue, and jobs that were set aside, are failures without a stack; anything else stays what it is', async () => {
  for (const name of ['NoQueue', 'SetAside'])
    await expect(atQueue(() => Promise.reject(Object.assign(new Error('why'), { name })))).rejects.toThrow(Failure)
  await expect(atQueue(() => Promise.reject(new TypeError('defect')))).rejects.toThrow(TypeError)
  expect(await atQueue(async ({ queueName }) => queueName({ host: 'a', port: 1, database: 0, encrypted: false }))).toBe('a:1')
})

test('sentences go to standard error', () => {
  const shell = memoryShell()
  saying(shell)('2 workers')
  expect([shell.said.out, shell.said.err]).toEqual(['', '2 workers\n'])
})
