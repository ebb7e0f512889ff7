/** The carrier curve with what the reader has set: in its own place on the page, and beside the controls. */
import type { LiveTold } from '../../live/liveTold.ts'
import type { LiveData } from '../../page/pageData.ts'
import { drawingHtml } from '../../page/drawingHtml.ts'
import { tableHtml } from '../../page/tableHtml.ts'
import { markPicked } from '../choice.ts'

/** under the picture beside the controls, until there is one of what is set */
const COMING = 'The curve of the file; with the change it is being simulated.'

export interface CurvePlaces {
  readonly show: (told: Extract<LiveTold, { kind: 'curve' }>) => void
  /** as the file has it */
  readonly back: () => void
  /** stands beside the controls, under the figures; drawn when it is first asked for */
  readonly copy: () => HTMLElement
}

/** @returns  null where the page has no curve */
export function curvePlaces({ curve }: LiveData): CurvePlaces | null {
  const own = curve === null ? null : document.getElementById(curve.cell)
  const picture = own?.querySelector<HTMLElement>('.picture')
  if (curve === null || !own || !picture) return null
  const [finding, how] = [own.querySelector('.finding')!, own.querySelector('.how')!]
  const numbers = document.querySelector(`#${curve.cell} .numbers, #${curve.cell}-numbers .numbers`)
  const copy = document.createElement('figure')
  copy.className = 'livecurve'
  copy.innerHTML = '<figcaption><p class="finding"></p></figcaption><div class="picture" role="img"></div><p class="how"></p>'
  const parts = { finding: finding.textContent, how: how.textContent, numbers: numbers?.innerHTML ?? '' }
  const ofFile = { ...parts, alt: picture.getAttribute('aria-label') ?? '', picture: picture.innerHTML }
  type Parts = typeof ofFile

  /** @param picked  number of carriers that is marked; null: the one whose details the page shows */
  function put({ finding: said, how: read, numbers: table, alt, picture: drawn }: Parts, note: string, picked: string | null): void {
    finding.textContent = said
    how.textContent = read
    if (numbers) numbers.innerHTML = table
    const [words, place, foot] = copy.children as unknown as [HTMLElement, HTMLElement, HTMLElement]
    words.firstElementChild!.textContent = said
    foot.textContent = note
    for (const each of [picture!, place]) {
      each.setAttribute('aria-label', alt)
      each.innerHTML = drawn
    }
    const looked = document.querySelector<HTMLInputElement>(`input[name="${CSS.escape(curve!.choice)}"]:checked`)?.value
    markPicked(curve!.choice, picked ?? looked ?? '')
  }
  let drawn = false
  const back = (): void => {
    own.classList.remove('changed')
    put(ofFile, COMING, null)
    drawn = true
  }
  let changed: (() => void) | null = null
  // what is handed out on paper tells the line as it is written
  addEventListener('beforeprint', () => changed !== null && put(ofFile, '', null))
  addEventListener('afterprint', () => changed?.())
  return {
    copy: () => {
      if (!drawn) back()
      return copy
    },
    back: () => {
      if (changed === null) return
      changed = null
      back()
    },
    show: ({ figure, carriers, simulated }) => {
      changed = () => {
        own.classList.add('changed')
        if (figure === null) put(ofFile, 'The number of carriers alone is changed: the curve is that of the file.', String(carriers))
        else if (figure.picture.kind === 'drawing')
          put(
            {
              finding: figure.finding,
              how: figure.howToRead,
              numbers: tableHtml(figure.table),
              alt: figure.alt,
              picture: drawingHtml(figure.picture.drawing),
            },
            `${simulated}. Level strokes: the mean in the file.`,
            null,
          )
      }
      changed()
    },
  }
}
