/** The address of a page: a link that sets values and asks for the runs that they give. */
import { readScenario } from '@loopwright/scenario'
import { addressValues } from '../../../packages/notebook/src/live/addressValues.ts'
import { liveInputs } from '../../../packages/notebook/src/live/liveInputs.ts'
import { type LiveSession, liveSession } from '../../../packages/notebook/src/live/liveSession.ts'
import { mutated, one } from '../mutated.ts'
import { oddFigure, type Reader } from '../reader.ts'
import { SCENARIOS } from './scenarios.ts'

/** milliseconds, as a reader who moves on */
const STOPPED_MS = 100

/** Of each scenario that a page can be made of: its session, and an address that sets everything. */
const pages = SCENARIOS.filter((text) => readScenario(text).scenario !== null).map((text) => {
  const inputs = liveInputs(text)
  const session = liveSession({ source: { file: 'line.yaml', text, beside: {}, variation: null }, inputs, seed: '1', curve: null })
  const values = inputs.slice(0, 12).map(({ key, file, shown }): [string, string] => {
    const other = shown.kind === 'choice' ? shown.options.at(-1)!.value : `${shown.to} ${shown.unit}`
    return [`if.${key}`, shown.kind === 'range' && key.startsWith('share') ? file : other]
  })
  const all: [string, string][] = [...values, ['if.=drive.speed', '9 m/min'], ['a.carriers', '3']]
  return { session, hash: `#${new URLSearchParams(all)}`, few: `#${new URLSearchParams(all.slice(0, 1))}` }
})

export const pageAddress: Reader = {
  texts: [JSON.stringify({ page: 0, hash: pages[0]!.few })],
  every: 15,
  spoil(whole) {
    const page = whole(pages.length)
    const { hash, few } = pages[page]!
    return JSON.stringify({ page, hash: mutated(whole(3) === 0 ? hash : few, [hash, few], whole).slice(0, 20_000) })
  },
  async try(text) {
    const { page, hash } = JSON.parse(text) as { page: number; hash: string }
    return await asked(pages[page]!.session, hash)
  },
}

async function asked(session: LiveSession, hash: string): Promise<string | null> {
  const [now, aside] = [addressValues(hash, 'if.'), addressValues(hash, 'a.')]
  const stop = new AbortController()
  const timer = setTimeout(() => stop.abort(), STOPPED_MS)
  const settings = [{ name: 'now', values: now }, ...(Object.keys(aside).length > 0 ? [{ name: 'A', values: aside }] : [])]
  let fault: string | null = null
  await session.ask(
    { id: 1, settings },
    (told) => {
      if (told.kind === 'refused') fault ??= /NaN|Infinity|undefined|\[object/.test(hash) ? null : oddFigure(told.text)
      else if (told.kind === 'told' && told.last) stop.abort()
    },
    stop.signal,
  )
  clearTimeout(timer)
  session.keep({ name: one(['what if', hash.slice(0, 40)], () => 0), values: now }, 10)
  return fault
}
