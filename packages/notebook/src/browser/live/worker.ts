/** The page's worker: the engine, told what to simulate. A newer wish ends the older one between two runs. */
import { type LiveSession, liveSession } from '../../live/liveSession.ts'
import type { FromEngine, ToEngine } from './protocol.ts'

/** of a worker, as far as it is used; the page's types know windows only */
interface Port {
  postMessage(message: FromEngine): void
  onmessage: ((event: { readonly data: ToEngine }) => void) | null
}

const port = globalThis as unknown as Port
let session: LiveSession | null = null
let stop = new AbortController()
let look = new AbortController()

port.onmessage = ({ data: message }) => {
  hear(message).catch((error: unknown) => {
    port.postMessage({ kind: 'failed', message: error instanceof Error ? error.message : String(error) })
  })
}

async function hear(message: ToEngine): Promise<void> {
  if (message.kind === 'open') {
    session = liveSession(message.data)
    port.postMessage({ kind: 'opened', line: session.line })
  }
  if (session === null) return
  if (message.kind === 'keep') {
    const kept = session.keep(message.setting, message.replications)
    if (kept !== null) port.postMessage(kept)
  } else if (message.kind === 'watch') {
    look.abort()
    look = new AbortController()
    const found = await session.watch(message.values, message.replication, look.signal)
    if (found === null) return
    if ('replay' in found) port.postMessage({ kind: 'watched', watch: message.id, watched: found })
    else port.postMessage({ kind: 'not watched', watch: message.id, text: found.text })
  } else if (message.kind === 'stretch') {
    const { id: watch, fromSeconds, toSeconds } = message
    const figure = session.stretch(fromSeconds, toSeconds)
    if (figure !== null) port.postMessage({ kind: 'stretched', watch, fromSeconds, toSeconds, figure })
  } else if (message.kind === 'ask') {
    stop.abort()
    stop = new AbortController()
    const { signal } = stop
    port.postMessage({ kind: 'begun', id: message.ask.id })
    await session.ask(
      message.ask,
      (told) => {
        if (!signal.aborted) port.postMessage(told)
      },
      signal,
    )
  }
}
