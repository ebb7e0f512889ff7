/** Serves one page on this machine alone: the page itself, a window around it, and what changes. No file is served. */
import { createHash } from 'node:crypto'
import type { Server } from 'node:http'
import { serve } from '@hono/node-server'
import { Hono } from 'hono'
import { streamSSE } from 'hono/streaming'
import type { WatchState } from './state.ts'
import { windowHtml } from './windowHtml.ts'

export interface Served {
  readonly address: string
  /** Sends a state to every window. */
  readonly tell: (state: WatchState) => void
  readonly close: () => Promise<void>
}

export interface ServeParts {
  /** of the window */
  readonly title: string
  /** script of the window */
  readonly script: string
  /** the page as it is now; null: there is none yet */
  readonly page: () => Promise<string | null>
  /** the first one to try; where it is taken, the next is */
  readonly port: number
}

/** addresses of this machine, for itself alone */
const LOOPBACK = '127.0.0.1'
const NAMES = [LOOPBACK, 'localhost', '[::1]']
const PORTS_TRIED = 20
const BEAT_MS = 15_000

/** @throws Error  where no port is to be had */
export async function servePage(parts: ServeParts): Promise<Served> {
  let state: WatchState = { version: 0, running: true, note: '', fault: null, since: null, parts: [] }
  const listeners = new Set<() => void>()
  const app = new Hono()
  let hosts: readonly string[] = []
  app.use(async (context, next) => {
    // a page from elsewhere that has this address under a name of its own, or asks from its own place, gets nothing
    const { host, origin } = { host: context.req.header('host') ?? '', origin: context.req.header('origin') }
    if (!hosts.includes(host)) return context.text('this server answers to its own address alone\n', 403)
    if (origin !== undefined && !hosts.includes(origin.replace(/^http:\/\//, '')))
      return context.text('this server answers to its own page alone\n', 403)
    const site = context.req.header('sec-fetch-site')
    if ((site === 'cross-site' || site === 'same-site') && context.req.header('sec-fetch-mode') !== 'navigate')
      return context.text('this server answers to its own page alone\n', 403)
    if (context.req.method !== 'GET') return context.text('this server only tells\n', 405)
    await next()
    const { headers } = context.res
    headers.set('Cache-Control', 'no-store')
    headers.set('X-Content-Type-Options', 'nosniff')
    headers.set('Cross-Origin-Resource-Policy', 'same-origin')
    headers.set('Referrer-Policy', 'no-referrer')
    return undefined
  })
  const { html, policy } = windowHtml(parts.title, parts.script, (text) => createHash('sha256').update(text).digest('base64'))
  app.get('/', (context) => context.html(html, 200, { 'Content-Security-Policy': policy }))
  app.get('/page', async (context) => {
    const page = await parts.page()
    return page === null
      ? context.text('', 204 as 200)
      : context.html(page, 200, { 'Content-Security-Policy': "frame-ancestors 'self'", 'X-Frame-Options': 'SAMEORIGIN' })
  })
  app.get('/events', (context) =>
    streamSSE(context, async (stream) => {
      let sent: WatchState | null = null
      let wake: () => void = () => {}
      const tell = (): void => wake()
      listeners.add(tell)
      stream.onAbort(() => {
        listeners.delete(tell)
        wake()
      })
      while (!stream.aborted) {
        if (sent !== state) {
          sent = state
          await stream.writeSSE({ event: 'state', data: JSON.stringify(state) })
        } else {
          const woken = new Promise<void>((done) => {
            wake = done
          })
          let beat: NodeJS.Timeout | undefined
          await Promise.race([
            woken,
            new Promise<void>((done) => {
              beat = setTimeout(done, BEAT_MS)
            }),
          ])
          clearTimeout(beat)
          if (sent === state && !stream.aborted) await stream.writeSSE({ event: 'beat', data: '' })
        }
      }
    }),
  )
  const { server, port } = await listening(app, parts.port)
  hosts = NAMES.map((name) => `${name}:${port}`)
  return {
    address: `http://${LOOPBACK}:${port}/`,
    tell: (now) => {
      state = now
      for (const listener of listeners) listener()
    },
    close: async () => {
      const closed = new Promise<void>((done) => server.close(() => done()))
      server.closeAllConnections()
      await closed
    },
  }
}

async function listening(app: Hono, first: number): Promise<{ readonly server: Server; readonly port: number }> {
  for (let port = first; ; port += 1) {
    const server = await new Promise<Server | NodeJS.ErrnoException>((done) => {
      const made = serve({ fetch: app.fetch, hostname: LOOPBACK, port }, () => done(made as Server)) as Server
      made.once('error', done)
    })
    if (!(server instanceof Error)) {
      const address = server.address()
      return { server, port: typeof address === 'object' && address !== null ? address.port : port }
    }
    if (server.code !== 'EADDRINUSE' || port >= first + PORTS_TRIED) throw server
  }
}
