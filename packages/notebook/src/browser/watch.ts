/** The script of the window around a page that is being written: takes what changed, and shows how the parts stand. */
import type { WatchState } from '../watch/state.ts'
import { pagePatches } from './patch.ts'

/** how the parts stand, drawn over the page */
const MARKS = `
[data-part-state] { position: relative; }
[data-part-state="stale"], [data-part-state="waiting"] { opacity: 0.55; }
[data-part-state="running"] { outline: 2px solid #1b7fd4; outline-offset: 4px; }
[data-part-state="failed"] { outline: 2px solid #c4314b; outline-offset: 4px; }
`
const LABELS = { fresh: 'fresh', stale: 'stale', running: 'running', failed: 'failed', waiting: 'waits' } as const

const find = <E extends HTMLElement>(id: string): E => document.getElementById(id) as E
const [frames, note, fault, all, parts] = ['frames', 'note', 'fault', 'all', 'parts'].map((id) => find(id)) as [
  HTMLElement,
  HTMLElement,
  HTMLElement,
  HTMLElement,
  HTMLElement,
]
const footer = document.querySelector('footer')!

let state: WatchState | null = null
let shown: HTMLIFrameElement | null = null
/** text of the page that is shown */
let text = ''
const patches = pagePatches()
let loading = false
let loaded = -1

/** milliseconds in which a run may be over: what it has told by then is taken in one go */
const SOON_MS = 250
let over: () => void = () => {}

/** Takes the page that is there now, and again while there is a newer one. */
async function renew(): Promise<void> {
  if (loading) return
  loading = true
  try {
    while (state !== null && loaded < state.version) {
      if (state.running)
        await new Promise<void>((done) => {
          over = done
          setTimeout(done, SOON_MS)
        })
      const version = state.version
      const answer = await fetch('/page')
      const now = answer.status === 200 ? await answer.text() : ''
      loaded = version
      if (now === '' || now === text) continue
      const page = shown?.contentDocument
      if (page && patches.put(page, now)) {
        text = now
        mark()
      } else await take(now, version)
    }
  } finally {
    loading = false
  }
}

/** The new page is loaded behind the old one, and takes its place where the reader was. */
async function take(now: string, version: number): Promise<void> {
  const next = document.createElement('iframe')
  next.className = 'next'
  next.title = 'Page'
  const hash = shown?.contentWindow?.location.hash || location.hash
  next.src = `/page?${version}${hash}`
  const ready = new Promise<void>((done) => next.addEventListener('load', () => done(), { once: true }))
  frames.append(next)
  await ready
  const from = shown?.contentDocument
  const to = next.contentDocument
  if (from && to) keepPlace(from, to)
  if (to?.title) document.title = to.title
  next.className = ''
  shown?.remove()
  shown = next
  text = now
  patches.loaded(now)
  mark()
}

/** What was unfolded, where the reader was, and what had the keyboard. */
function keepPlace(from: Document, to: Document): void {
  const named = (page: Document): HTMLDetailsElement[] => [...page.querySelectorAll('details')]
  const keyOf = (details: HTMLDetailsElement): string => `${details.closest('[id]')?.id} ${details.querySelector('summary')?.textContent}`
  const open = new Map(named(from).map((details) => [keyOf(details), details.open]))
  for (const details of named(to)) details.open = open.get(keyOf(details)) ?? details.open
  // what sticks to the edge says nothing of the place
  const moves = (each: Element): boolean => !each.closest('fieldset, nav') && from.defaultView!.getComputedStyle(each).position !== 'sticky'
  const top = [...from.querySelectorAll('main [id]')].find((each) => each.getBoundingClientRect().bottom > 0 && moves(each))
  const same = top === undefined ? null : to.getElementById(top.id)
  const window = to.defaultView!
  if (top !== undefined && same !== null)
    window.scrollBy({ top: same.getBoundingClientRect().top - top.getBoundingClientRect().top, behavior: 'instant' })
  else window.scrollTo({ top: from.defaultView?.scrollY ?? 0, behavior: 'instant' })
  const { activeElement: active } = from
  if (document.activeElement === shown && active?.id) to.getElementById(active.id)?.focus({ preventScroll: true })
}

/** How the parts stand, on the page and in the list. */
function mark(): void {
  if (state === null) return
  const page = shown?.contentDocument
  const view = shown?.contentWindow as (Window & typeof globalThis) | null | undefined
  if (page && view && page.adoptedStyleSheets.length === 0) {
    const sheet = new view.CSSStyleSheet()
    sheet.replaceSync(MARKS)
    page.adoptedStyleSheets = [sheet]
  }
  for (const { ids, state: how } of state.parts) {
    for (const id of ids) {
      const cell = page?.getElementById(id)
      if (how === 'fresh') cell?.removeAttribute('data-part-state')
      else cell?.setAttribute('data-part-state', how)
    }
  }
}

function tell(now: WatchState): void {
  state = now
  const failed = now.fault !== null || now.parts.some(({ state: how }) => how === 'failed')
  footer.dataset.state = now.running ? 'running' : failed ? 'failed' : 'fresh'
  const runs = now.parts.find(({ state: how }) => how === 'running')
  // progress of a study names itself
  const told = runs !== undefined && now.note === 'Running' ? `Running: ${runs.place}` : now.note
  if (note.textContent !== told) note.textContent = told
  if (fault.textContent !== (now.fault ?? '')) fault.textContent = now.fault ?? ''
  all.hidden = now.parts.length === 0
  parts.replaceChildren(
    ...now.parts.map(({ place, state: how, ids }) => {
      const item = document.createElement('li')
      const button = document.createElement('button')
      button.type = 'button'
      button.dataset.state = how
      const from = how === 'running' && now.since !== null ? ` since ${new Date(now.since).toTimeString().slice(0, 8)}` : ''
      button.textContent = `${place}: ${LABELS[how]}${from}`
      button.addEventListener('click', () => {
        const page = shown?.contentDocument
        ids
          .map((id) => page?.getElementById(id))
          .find((cell) => cell)
          ?.scrollIntoView({ block: 'start' })
      })
      item.append(button)
      return item
    }),
  )
  mark()
  if (!now.running) over()
  // a server that has gone says so by its events
  renew().catch(() => {})
}

const events = new EventSource('/events')
events.addEventListener('state', ({ data }) => tell(JSON.parse(data as string) as WatchState))
events.addEventListener('open', () => {
  // the server may be another one, which counts anew
  loaded = -1
})
events.addEventListener('error', () => {
  footer.dataset.state = 'gone'
  note.textContent = 'The command has ended; the page stays as it is.'
})
