/** A way to a server that can be cut, slowed and silenced. */
import { now } from './clock.ts'
import { createConnection, createServer, type Socket } from 'node:net'
import { setTimeout as wait } from 'node:timers/promises'

export interface Way {
  readonly port: number
  /** Ends all connections, and lets none through for so long. */
  cut(ms: number): Promise<void>
  /** Holds back every byte for so long, each way. */
  slow(delayMs: number): void
  /** Lets connections stand and nothing pass, either way; what was on its way arrives afterwards. */
  silent(is: boolean): void
  /** Passes on what is asked and loses the answers, then ends the connections: who asked does not know what was done. */
  loseAnswers(ms: number): Promise<void>
  close(): Promise<void>
}

export async function proxy(target: number): Promise<Way> {
  const sockets = new Set<Socket>()
  let closedUntil = 0
  let delayMs = 0
  let stopped = false
  let losing = false
  /** of each connection and direction: lets go what is due, in the order in which it came */
  const pumps = new Set<() => void>()
  const pass = (from: Socket, to: Socket, isAnswer: boolean): void => {
    const held: { readonly atMs: number; readonly bytes: Buffer }[] = []
    const pump = (): void => {
      while (!stopped && held.length > 0 && held[0]!.atMs <= now()) {
        const { bytes } = held.shift()!
        if (!to.destroyed) to.write(bytes)
      }
    }
    pumps.add(pump)
    from.on('close', () => pumps.delete(pump))
    from.on('data', (bytes: Buffer) => {
      if (isAnswer && losing) return
      held.push({ atMs: now() + delayMs, bytes })
      pump()
      if (delayMs > 0) setTimeout(pump, delayMs + 1)
    })
  }
  const endAll = (): void => {
    for (const socket of sockets) socket.destroy()
    sockets.clear()
  }
  const server = createServer((client) => {
    if (now() < closedUntil) {
      client.destroy()
      return
    }
    const behind = createConnection(target, '127.0.0.1')
    for (const [one, other] of [
      [client, behind],
      [behind, client],
    ] as const) {
      sockets.add(one)
      one.setNoDelay(true)
      one.on('error', () => {})
      one.on('close', () => {
        sockets.delete(one)
        other.destroy()
      })
      pass(one, other, one === behind)
    }
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const address = server.address()
  return {
    port: typeof address === 'object' && address !== null ? address.port : 0,
    async cut(ms) {
      closedUntil = now() + ms
      endAll()
      await wait(ms)
    },
    slow(ms) {
      delayMs = ms
      // what came while the way was slower goes before what comes now
    },
    silent(is) {
      stopped = is
      if (!is) for (const pump of pumps) pump()
    },
    async loseAnswers(ms) {
      losing = true
      await wait(ms)
      endAll()
      losing = false
    },
    close: async () => {
      endAll()
      await new Promise((resolve) => server.close(resolve))
    },
  }
}
