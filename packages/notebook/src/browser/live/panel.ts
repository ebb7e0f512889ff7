/** The controls of the page that change the line, and what the worker tells of them. */
import { type LiveValues, OWN_PATH } from '../../live/liveChanges.ts'
import type { LiveKept, ToldSetting } from '../../live/liveTold.ts'
import { stateWords } from '../../live/stateWords.ts'
import { keptHtml, refusedHtml, toldHtml } from '../../live/toldHtml.ts'
import type { LiveData } from '../../page/pageData.ts'
import { keepValues, valuesIn } from './address.ts'
import { type Engine, engineOf } from './engine.ts'
import { playerOf } from '../replay/player.ts'
import { showAnswered } from './answered.ts'
import { curvePlaces } from './curve.ts'
import { copyText, saveFile } from '../handOver.ts'
import type { FromEngine } from './protocol.ts'
import { markFileParts } from './ofFile.ts'
import { type Row, rowsOf } from './rows.ts'
import { zonePlanOf } from './zonePlan.ts'

/** begin the keys of the address: what is set now, and what is set beside it */
const [NOW, ASIDE] = ['if.', 'a.']
/** a slider that moves asks so many milliseconds after its last step */
const WAIT_MS = 40
/** replications of a command that is kept before anything was told */
const FEW = 5

export function bringToLife(data: LiveData): void {
  const place = document.querySelector<HTMLElement>('.live')
  if (place === null || !document.documentElement.classList.contains('working')) return
  const part = (selector: string): HTMLElement => place.querySelector<HTMLElement>(selector)!
  const [state, told, kept] = [part('.livestate'), part('.livetold'), part('.livekept')]
  const button = (act: string): HTMLButtonElement => place.querySelector<HTMLButtonElement>(`[data-act="${act}"]`)!
  let own: LiveValues = {}
  let aside: LiveValues | null = null
  let timer: ReturnType<typeof setTimeout> | undefined
  let last: ToldSetting | null = null
  let toSave: LiveKept | null = null

  const rows = rowsOf(place, data.inputs, () => changed())
  showAnswered(place, rows, data.curve?.named ?? null)
  const plan = zonePlanOf(place, rows)
  const curve = curvePlaces(data)
  const values = (): LiveValues => ({ ...setIn(rows), ...own })
  const isSet = (): boolean => Object.keys(values()).length > 0
  const engine: Engine = engineOf(data, hear)
  const stage = document.querySelector<HTMLElement>('.replay')
  const player =
    stage === null
      ? null
      : playerOf(stage, {
          watch: (replication) => engine.watch(values(), replication),
          stretch: (fromSeconds, toSeconds) => engine.stretch(fromSeconds, toSeconds),
        })

  function ask(): void {
    state.textContent = 'Simulating …'
    place!.classList.add('busy')
    const now = { name: aside === null ? 'what if' : 'B', values: values() }
    engine.ask(aside === null ? [now] : [{ name: 'A', values: aside }, now])
  }

  /** after each change of a control */
  function changed(wait = WAIT_MS): void {
    const now = values()
    for (const row of rows) row.mark(Object.hasOwn(now, row.input.key))
    plan.follow()
    markFileParts(isSet(), data.curve?.cell ?? null)
    if (!isSet()) curve?.back()
    keepValues(NOW, isSet() ? now : null)
    keepValues(ASIDE, aside)
    button('back').disabled = !isSet() && aside === null
    button('aside').disabled = !isSet()
    button('aside').textContent = aside === null ? 'Set beside as A' : 'Set beside as A again'
    button('keep').disabled = !isSet()
    kept.hidden = true
    listOwn()
    clearTimeout(timer)
    timer = setTimeout(() => {
      ask()
      player?.renew()
    }, wait)
  }

  function hear(message: FromEngine): void {
    player?.hear(message)
    if (message.kind === 'opened') plan.draw(message.line)
    if (message.kind === 'told') {
      last = message
      const any = message.changes.some((list) => list.length > 0)
      told.innerHTML = toldHtml(message, any)
      if (any && curve !== null) [...told.querySelectorAll('.figures, .livechanges')].at(-1)!.after(curve.copy())
      state.textContent = stateWords(message, any, data.curve?.named ?? null)
      place!.classList.toggle('busy', !message.last)
      place!.dataset.replications = String(message.replications)
      place!.dataset.lines = JSON.stringify(message.lines)
    } else if (message.kind === 'refused') {
      told.innerHTML = refusedHtml(message.text)
      state.textContent = 'Nothing was simulated.'
      place!.classList.remove('busy')
      rows.find(({ input }) => input.key === message.key)?.fault()
      curve?.back()
    } else if (message.kind === 'curve') {
      curve?.show(message)
    } else if (message.kind === 'kept') {
      toSave = message
      kept.innerHTML = keptHtml(message)
      kept.hidden = false
    } else if (message.kind === 'failed') {
      told.innerHTML = ''
      state.textContent = `This page cannot simulate here: ${message.message}.`
      place!.classList.remove('busy')
    }
  }

  function back(): void {
    own = {}
    aside = null
    for (const row of rows) row.set(row.input.file)
    changed(0)
  }

  /** What is set by path has no row of its own: each stands in a list, to be taken back. */
  function listOwn(): void {
    const list =
      place!.querySelector('.liveownlist') ??
      part('.liveown').appendChild(Object.assign(document.createElement('ul'), { className: 'liveownlist' }))
    list.replaceChildren(
      ...Object.entries(own).map(([key, value]) => {
        const item = document.createElement('li')
        const remove = Object.assign(document.createElement('button'), { type: 'button', textContent: 'Take back' })
        remove.addEventListener('click', () => {
          own = Object.fromEntries(Object.entries(own).filter(([each]) => each !== key))
          changed(0)
        })
        item.append(`${key.slice(OWN_PATH.length)} = ${value} `, remove)
        return item
      }),
    )
  }

  const copy = (text: string): void => {
    copyText(text).then((says) => {
      state.textContent = says
    })
  }
  const acts: Readonly<Record<string, () => void>> = {
    back,
    aside: () => {
      aside = values()
      changed(0)
    },
    keep: () => engine.keep({ name: 'what if', values: values() }, last?.replications ?? FEW),
    own: () => {
      const [path, value] = [...part('[data-key="="]').querySelectorAll('input')].map((field) => field.value.trim())
      if (path === '' || value === '') return
      own = { ...own, [`${OWN_PATH}${path}`]: value! }
      changed(0)
    },
    copy: () => copy(toSave?.yaml ?? ''),
    save: () => saveFile(toSave?.fileName ?? '', new Blob([toSave?.file ?? ''], { type: 'application/yaml' })),
    link: () => copy(location.href),
  }
  place.addEventListener('click', (event) => {
    const act = (event.target as Element).closest<HTMLElement>('[data-act]')?.dataset.act
    if (act !== undefined) acts[act]?.()
  })
  addEventListener('keydown', (event) => {
    const here = document.activeElement === document.body || place.contains(document.activeElement)
    if (event.key === 'Escape' && here && (isSet() || aside !== null)) back()
  })

  /** what the address says, where it says something that is not set */
  function restore(): boolean {
    const [now, beside] = [valuesIn(NOW), valuesIn(ASIDE)]
    if (same(now, values()) && same(beside, aside ?? {})) return false
    for (const row of rows) row.set(now[row.input.key] ?? row.input.file)
    own = Object.fromEntries(Object.entries(now).filter(([key]) => key.startsWith(OWN_PATH)))
    aside = Object.keys(beside).length === 0 ? null : beside
    changed(0)
    return true
  }
  addEventListener('hashchange', () => {
    if (location.hash === '' || location.hash.includes('=')) restore()
  })

  // the engine comes when it is about to be wanted
  const seen = new IntersectionObserver((entries) => {
    if (!entries.some(({ isIntersecting }) => isIntersecting)) return
    seen.disconnect()
    if (!isSet()) ask()
  })
  if (restore()) return
  seen.observe(place)
}

/** Texts of the rows that are not those of the file. */
function setIn(rows: readonly Row[]): LiveValues {
  return Object.fromEntries(rows.flatMap(({ input, text }): [string, string][] => (text() === input.file ? [] : [[input.key, text()]])))
}

const same = (a: LiveValues, b: LiveValues): boolean => {
  const keys = Object.keys(a)
  return keys.length === Object.keys(b).length && keys.every((key) => a[key] === b[key])
}
