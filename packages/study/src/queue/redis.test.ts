import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { encryptedServer } from '../../../../tests/faults/encryptedServer.ts'
import { freePort, redisServer } from '../../../../tests/faults/redisServer.ts'
import { connect, isPassing, patiently, type QueuePlace } from './redis.ts'

const WORD = 'geheimes Wort 7'
const placeOf = (
  port: number,
  { password = null, user = null, authorities = null, encrypted = false }: Partial<QueuePlace['access']> & { encrypted?: boolean } = {},
): QueuePlace => ({
  address: { host: encrypted ? 'localhost' : '127.0.0.1', port, database: 0, encrypted },
  access: { user, password, authorities },
})
const refusal = async (place: QueuePlace): Promise<string> => {
  try {
    const { redis } = await connect(place)
    redis.disconnect()
    return 'none'
  } catch (error) {
    return `${(error as Error).name}: ${(error as Error).message}`
  }
}

describe('a server', () => {
  test('that is not there is told in a sentence', async () => {
    const port = await freePort()
    expect(await refusal(placeOf(port))).toBe(
      `NoQueue: there is no queue to be had at 127.0.0.1:${port}: nothing listens there (connection refused)`,
    )
  })

  test('that wants a password lets in with it, and says what is missing without it; the word is never repeated', async () => {
    const server = await redisServer(['--requirepass', WORD])
    try {
      expect(await refusal(placeOf(server.port))).toContain('it wants a password; set LOOPWRIGHT_QUEUE_PASSWORD')
      const wrong = await refusal(placeOf(server.port, { password: 'falsch 9' }))
      expect(wrong).toContain('it does not take this user and password')
      expect(wrong).not.toContain('falsch')
      expect(await refusal(placeOf(server.port, { password: WORD }))).toBe('none')
      expect(await refusal(placeOf(server.port, { user: 'default', password: WORD }))).toBe('none')
    } finally {
      await server.stop()
    }
  })

  test('that may drop what it holds is refused', async () => {
    const server = await redisServer(['--maxmemory-policy', 'allkeys-lru'])
    try {
      expect(await refusal(placeOf(server.port))).toContain('a queue needs noeviction')
    } finally {
      await server.stop()
    }
  })

  test('behind encryption lets in who knows its certificate, and nobody else', async () => {
    const { port, certificate, stop } = await encryptedServer(['--requirepass', WORD])
    try {
      const authorities = readFileSync(certificate, 'utf8')
      expect(await refusal(placeOf(port, { encrypted: true, authorities, password: WORD }))).toBe('none')
      expect(await refusal(placeOf(port, { encrypted: true, password: WORD }))).toContain('LOOPWRIGHT_QUEUE_CA names the file')
    } finally {
      await stop()
    }
  })
})

test('what a server cannot do for now is asked again; anything else is not', async () => {
  const said: string[] = []
  let asked = 0
  const full = async (): Promise<number> => {
    asked += 1
    if (asked < 3) throw new Error('MISCONF Errors writing to the AOF file: No space left on device')
    return asked
  }
  expect(
    await patiently(
      full,
      () => false,
      (sentence) => said.push(sentence),
    ),
  ).toBe(3)
  expect(said).toEqual([expect.stringContaining('No space left on device')])
  await expect(
    patiently(
      () => Promise.reject(new Error('WRONGTYPE')),
      () => false,
      () => {},
    ),
  ).rejects.toThrow('WRONGTYPE')
  await expect(
    patiently(
      () => Promise.reject(new Error('OOM command not allowed')),
      () => true,
      () => {},
    ),
  ).rejects.toThrow('OOM')
  expect([isPassing(new Error('LOADING')), isPassing(new Error('ERR')), isPassing('OOM')]).toEqual([true, false, false])
})
