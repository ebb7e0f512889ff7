/** Requests to the server of a notebook that is being written, as bytes on its socket. */
import { connect } from 'node:net'
import { servePage, type Served } from '../../../packages/notebook/src/watch/server.ts'
import { mutated, one } from '../mutated.ts'
import type { Reader } from '../reader.ts'

const HOST = 'HOST'
const PAGE = '<!doctype html><title>the page</title>'
const REQUESTS = [
  `GET / HTTP/1.1\r\nHost: ${HOST}\r\nConnection: close\r\n\r\n`,
  `GET /page HTTP/1.1\r\nHost: ${HOST}\r\nOrigin: http://${HOST}\r\nSec-Fetch-Site: same-origin\r\nConnection: close\r\n\r\n`,
  `GET /../../etc/passwd HTTP/1.1\r\nHost: ${HOST}\r\n\r\n`,
  `POST /page HTTP/1.1\r\nHost: ${HOST}\r\nContent-Length: 5\r\nConnection: close\r\n\r\nhello`,
  `GET /page HTTP/1.1\r\nHost: elsewhere\r\n\r\n`,
  `OPTIONS * HTTP/1.0\r\n\r\n`,
  `GET /page?x=%00&__proto__=1 HTTP/1.1\r\nHost: ${HOST}\r\nTransfer-Encoding: chunked\r\n\r\n5\r\nhello\r\n0\r\n\r\n`,
]

/** milliseconds that somebody waits for an answer to such a request */
const WAITED_MS = 30

let served: Promise<Served> | null = null
export const watchServer: Reader = {
  texts: REQUESTS,
  every: 15,
  spoil: (whole) => mutated(one(REQUESTS, whole), REQUESTS, whole),
  async try(text) {
    served ??= servePage({ title: 'a', script: '', page: async () => PAGE, port: 4173 })
    const server = await served
    const { host, hostname, port } = new URL(server.address)
    const answer = await answerTo(Number(port), hostname, text.replaceAll(HOST, host), WAITED_MS)
    if (/root:|\/bin\/|daemon/.test(answer)) return `a file of the disk is served: ${answer.slice(0, 200)}`
    if (/^HTTP\/1\.1 5/.test(answer)) return `it answers ${answer.slice(0, 200)}`
    if (answer.includes(PAGE) && !text.includes(HOST) && !/127\.0\.0\.1|localhost|\[::1\]/.test(text))
      return 'it answers to another name than its own'
    const right = await answerTo(Number(port), hostname, REQUESTS[1]!.replaceAll(HOST, host), 1000)
    return right.includes(PAGE) ? null : `a right request afterwards is answered by ${right.slice(0, 200)}`
  },
}

/** What comes back until the other side ends or the time is over. */
const answerTo = async (port: number, host: string, text: string, waited: number): Promise<string> =>
  await new Promise((done) => {
    let answer = ''
    const socket = connect(port, host, () => socket.write(text, 'latin1'))
    const end = (): void => {
      clearTimeout(timer)
      socket.destroy()
      done(answer)
    }
    const timer = setTimeout(end, waited)
    socket.on('data', (bytes) => {
      answer += bytes.toString('latin1')
    })
    socket.on('close', end)
    socket.on('error', end)
  })
