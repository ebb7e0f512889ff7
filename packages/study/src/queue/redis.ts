/** The server of a queue. Its libraries are loaded where a queue is named, and nowhere else. */
import type { ConnectionOptions } from 'bullmq'
import type { Redis, RedisOptions } from 'ioredis'
import { NoQueue } from './failure.ts'
import { type QueueAccess, type QueueAddress, QUEUE_ENVIRONMENT, queueName } from './queueAddress.ts'

/** Where a queue is, and what lets us in. */
export interface QueuePlace {
  readonly address: QueueAddress
  readonly access: QueueAccess
}

/** A connection, and how further ones are made. */
export interface Server {
  readonly redis: Redis
  readonly options: ConnectionOptions
  readonly bullmq: typeof import('bullmq')
  readonly name: string
}

const VERSIONS = 'bullmq@6.7.0 ioredis@6.0.0'
/** milliseconds until a server that has not answered counts as absent */
const ANSWER_MS = 5000
/** and where nothing listens, since it may be starting */
const REFUSED_MS = 1000
const LOOK_MS = 50
/** what will not be otherwise a moment later */
const FINAL = /NOAUTH|WRONGPASS|NOPERM|invalid password|ENOTFOUND|certificate|self.signed|altname/i
/** a connection on which nothing comes back for so long is made anew; longer than any wait on the server's side */
const SILENT_MS = 12_000

/**
 * Connects. Once it has answered, a server that goes away is waited for.
 *
 * @throws NoQueue  where there is no answer, no entry, or no library
 */
export async function connect(place: QueuePlace): Promise<Server> {
  const { bullmq, Redis } = await libraries()
  const name = queueName(place.address)
  const options = optionsOf(place)
  const redis = new Redis({ ...options, lazyConnect: true })
  let last = 'no answer'
  redis.on('error', (error: Error) => {
    last = error.message || String((error as NodeJS.ErrnoException).code)
  })
  let timer: ReturnType<typeof setInterval> | undefined
  try {
    let looks = 0
    const late = new Promise<never>((_, reject) => {
      timer = setInterval(() => {
        looks += 1
        const enough = FINAL.test(last) ? 0 : last.includes('ECONNREFUSED') ? REFUSED_MS : ANSWER_MS
        if (looks * LOOK_MS > enough) reject(new Error(last))
      }, LOOK_MS)
    })
    redis.connect().catch(() => {})
    const told = await Promise.race([redis.info(), late])
    const policy = /maxmemory_policy:(\S+)/.exec(told)?.[1]
    if (policy !== undefined && policy !== 'noeviction')
      throw new Error(`it may drop what it holds (maxmemory-policy ${policy}); a queue needs noeviction`)
  } catch (error) {
    redis.disconnect()
    throw new NoQueue(`there is no queue to be had at ${name}: ${words(error instanceof Error ? error.message : String(error))}`)
  } finally {
    clearInterval(timer)
  }
  return { redis, options: options as ConnectionOptions, bullmq, name }
}

async function libraries(): Promise<{ bullmq: typeof import('bullmq'); Redis: new (options: RedisOptions) => Redis }> {
  try {
    const [bullmq, ioredis] = await Promise.all([import('bullmq'), import('ioredis')])
    return { bullmq, Redis: ioredis.Redis as unknown as new (options: RedisOptions) => Redis }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ERR_MODULE_NOT_FOUND') throw error
    throw new NoQueue(`a queue needs two libraries that are not installed here: npm install ${VERSIONS}`)
  }
}

function optionsOf({ address: { host, port, database, encrypted }, access: { user, password, authorities } }: QueuePlace): RedisOptions {
  return {
    host,
    port,
    db: database,
    ...(user === null ? {} : { username: user }),
    ...(password === null ? {} : { password }),
    ...(encrypted ? { tls: { servername: host, ...(authorities === null ? {} : { ca: authorities }) } } : {}),
    maxRetriesPerRequest: null,
    connectTimeout: ANSWER_MS,
    socketTimeout: SILENT_MS,
    keepAlive: 5000,
    retryStrategy: (times) => Math.min(1000, 50 * times),
    reconnectOnError: (error) => (error.message.startsWith('READONLY') ? 2 : false),
  }
}

/** What the commonest refusals mean. */
function words(message: string): string {
  const { user, password, authorities } = QUEUE_ENVIRONMENT
  if (/NOAUTH/.test(message)) return `it wants a password; set ${password}, and ${user} where it wants a user`
  if (/WRONGPASS|invalid username-password|invalid password/.test(message))
    return `it does not take this user and password; look at ${user} and ${password}`
  if (/certificate|self.signed|altname/i.test(message))
    return `its certificate is not known here (${message}); ${authorities} names the file of who vouches for it`
  if (/ECONNREFUSED/.test(message)) return 'nothing listens there (connection refused)'
  if (/ENOTFOUND|EAI_AGAIN/.test(message)) return 'no machine of this name is known'
  if (/NOPERM/.test(message)) return `this user may not do what a queue needs (${message})`
  return message
}

/** What a server says that cannot write for now; what is asked of it is asked again. */
const BUSY =
  /^(MISCONF|OOM|READONLY|LOADING|BUSY|TRYAGAIN|CLUSTERDOWN|MASTERDOWN|NOREPLICAS)|Connection is closed|Socket timeout|ECONNRESET|EPIPE/

/** Whether a server only cannot for now: it has no room, or is starting. */
export const isPassing = (error: unknown): error is Error => error instanceof Error && BUSY.test(error.message)

/**
 * Asks until the server can.
 *
 * @param ended  whether to give up
 * @param say    told once why it has to wait
 */
export async function patiently<T>(ask: () => Promise<T>, ended: () => boolean, say: (sentence: string) => void): Promise<T> {
  for (let told = false; ; told = true) {
    try {
      return await ask()
    } catch (error) {
      if (!isPassing(error) || ended()) throw error
      if (!told) say(`the server of the queue cannot write for now (${error.message.slice(0, 120)}); it is asked again`)
      await new Promise((resolve) => setTimeout(resolve, 500))
    }
  }
}
