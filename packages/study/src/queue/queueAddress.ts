/** Where a queue is, and who may enter it. What is secret never stands in the address: an address is typed, shown in process lists, and printed on pages. */

/** Of a queue: `redis://host:6379/0`, with encryption `rediss://host`. */
export interface QueueAddress {
  readonly host: string
  readonly port: number
  /** number of the database */
  readonly database: number
  readonly encrypted: boolean
}

/** What lets a machine in; each is null where it is not needed. */
export interface QueueAccess {
  readonly user: string | null
  readonly password: string | null
  /** certificates of those who vouch for the server, PEM; null: those that Node knows */
  readonly authorities: string | null
}

/** Names of what is looked up in the environment. */
export const QUEUE_ENVIRONMENT = {
  user: 'LOOPWRIGHT_QUEUE_USER',
  password: 'LOOPWRIGHT_QUEUE_PASSWORD',
  /** a file */
  authorities: 'LOOPWRIGHT_QUEUE_CA',
} as const

const PORT = 6379

/**
 * Reads the address of a queue. The sentence of a refusal repeats nothing of the text, since a password may stand in it.
 *
 * @throws RangeError  where it is none, or holds a user or password
 * @example queueAddress('redis://plant-server') // => { host: 'plant-server', port: 6379, database: 0, encrypted: false }
 */
export function queueAddress(text: string): QueueAddress {
  const { protocol, username, password, hostname, port, pathname, search, hash } = urlOf(text)
  if (username !== '' || password !== '') {
    const { user, password: word } = QUEUE_ENVIRONMENT
    throw new RangeError(
      `the address of the queue holds a user or a password, which everybody sees who lists processes: leave them out and set ${user} and ${word}`,
    )
  }
  const database = /^\/?(\d{0,4})$/.exec(pathname)?.[1]
  if (!/^rediss?:$/.test(protocol) || hostname === '' || port === '0' || database === undefined || search !== '' || hash !== '')
    throw new RangeError(WRONG)
  return {
    host: hostname.replace(/^\[(.*)\]$/, '$1'),
    port: port === '' ? PORT : Number(port),
    database: Number(database),
    encrypted: protocol === 'rediss:',
  }
}

const WRONG = 'the address of a queue is written redis://host, redis://host:6379/0, or rediss://host where the way there is encrypted'

function urlOf(text: string): URL {
  try {
    return new URL(text)
  } catch {
    throw new RangeError(WRONG)
  }
}

/**
 * How people are told where a queue is.
 *
 * @example queueName({ host: 'plant-server', port: 6379, database: 0, encrypted: false }) // => 'plant-server:6379'
 */
export const queueName = ({ host, port, database }: QueueAddress): string => `${host}:${port}${database === 0 ? '' : `/${database}`}`
