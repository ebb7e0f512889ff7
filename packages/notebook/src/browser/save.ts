/** What a reader takes out of the page: a figure as SVG, PNG or CSV, a sentence with its number. Nothing leaves the page but what is saved. */
import { copyText, saveFile } from './handOver.ts'

const BYTES_OF_MARK = '\ufeff'
/** pixels of a PNG for one of the drawing */
const ZOOM = 2

/** Wires the buttons that stand with each figure and with the answer. */
export function offerSaves(): void {
  document.addEventListener('click', (event) => {
    const button = (event.target as Element).closest?.<HTMLButtonElement>('.saves button')
    if (!button) return
    const status = button.parentElement!.querySelector('[role=status]')!
    const say = (text: string): void => {
      status.textContent = text
    }
    Promise.resolve(button.dataset.as)
      .then((as) => taken(as, button))
      .then(say, () => say('That did not work in this browser.'))
  })
}

async function taken(as: string | undefined, button: Element): Promise<string> {
  if (as === 'answer') return await copyText(sentenceOf(button.closest('.answer')!, '.first'))
  const figure = button.closest('figure')!
  const { id } = figure
  switch (as) {
    case 'svg':
      return saved(`${id}.svg`, new Blob([figureSvg(figure).text], { type: 'image/svg+xml' }))
    case 'png':
      return saved(`${id}.png`, await figurePng(figure))
    case 'csv':
      return saved(`${id}.csv`, new Blob([BYTES_OF_MARK, csvOf(numbersOf(figure))], { type: 'text/csv' }))
    default:
      return await copyText(sentenceOf(figure, '.finding'))
  }
}

/** Where the numbers of a figure stand: with it, or for the figure of the answer further down. */
function numbersOf(figure: Element): Element {
  return figure.querySelector('.numbers') ?? document.querySelector(`#${CSS.escape(figure.id)}-numbers .numbers`)!
}

function saved(name: string, content: Blob): string {
  saveFile(name, content)
  return `Saved as ${name}.`
}

/** What is said there, with the question, and an address where the page has one. */
function sentenceOf(place: Element, said: string): string {
  const where = document.querySelector('.where')?.textContent?.trim() ?? ''
  const address = location.protocol === 'file:' ? '' : `\n${location.href.replace(/#.*$/, '')}#${place.id}`
  return `${place.querySelector(said)?.textContent?.trim() ?? ''}\n(${document.title} ${where})${address}`
}

/** The picture that is seen now, as a drawing that stands alone. */
function figureSvg(figure: Element): { readonly text: string; readonly width: number; readonly height: number } {
  const seen = [...figure.querySelectorAll<SVGSVGElement>('.picture svg')].find((svg) => svg.getBoundingClientRect().width > 0)
  if (seen === undefined) throw new Error('no picture is seen')
  const { width, height } = seen.getBoundingClientRect()
  const copy = seen.cloneNode(true) as SVGSVGElement
  // what is set by the page's style sheet becomes the drawing's own
  const [before, after] = [
    [seen, ...seen.querySelectorAll('*')],
    [copy, ...copy.querySelectorAll('*')],
  ]
  for (const [index, element] of before.entries()) {
    const style = getComputedStyle(element)
    for (const name of [
      'fill',
      'stroke',
      'stroke-width',
      'stroke-dasharray',
      'opacity',
      'font-family',
      'font-size',
      'font-weight',
      'text-anchor',
      'paint-order',
      'display',
    ])
      after[index]!.setAttribute(name, style.getPropertyValue(name))
    after[index]!.removeAttribute('class')
    after[index]!.removeAttribute('style')
  }
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
  copy.setAttribute('width', String(width))
  copy.setAttribute('height', String(height))
  copy.setAttribute('role', 'img')
  copy.setAttribute(
    'aria-label',
    figure.querySelector('.picture')?.getAttribute('aria-label') ?? figure.querySelector('.finding')?.textContent ?? '',
  )
  const ground = document.createElementNS('http://www.w3.org/2000/svg', 'rect')
  for (const [name, value] of Object.entries({ width: '100%', height: '100%', fill: getComputedStyle(document.body).backgroundColor }))
    ground.setAttribute(name, value)
  copy.prepend(ground)
  // hatchings stand once in the page
  const used = new Set([...copy.outerHTML.matchAll(/url\((?:&quot;|["'])?#([\w-]+)/g)].map(([, id]) => id!))
  for (const id of used) {
    const shared = document.getElementById(id)
    if (shared !== null && !seen.contains(shared)) copy.prepend(shared.cloneNode(true))
  }
  return { text: new XMLSerializer().serializeToString(copy), width, height }
}

async function figurePng(figure: Element): Promise<Blob> {
  const { text, width, height } = figureSvg(figure)
  const image = new Image()
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`
  await image.decode()
  const canvas = document.createElement('canvas')
  canvas.width = Math.ceil(width * ZOOM)
  canvas.height = Math.ceil(height * ZOOM)
  canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height)
  return await new Promise<Blob>((done, fail) =>
    canvas.toBlob((made) => (made === null ? fail(new Error('no picture was made')) : done(made)), 'image/png'),
  )
}

/** The table as it is read now (RFC 4180). A text that a spreadsheet would carry out as a formula gets an apostrophe before it. */
function csvOf(numbers: Element): string {
  const rows = [...numbers.querySelectorAll('tr')].map((row) =>
    [...row.querySelectorAll('th, td')].map((cell) => cellText(cell.textContent ?? '')),
  )
  return rows.map((row) => `${row.join(',')}\r\n`).join('')
}

function cellText(text: string): string {
  const plain = text
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/(?<=\d)[\u202f\u2009\u00a0 ](?=\d{3}(?!\d))/g, '')
    .replace(/^\u2212(?=\d)/, '-')
  const harmless = /^[=+\-@]/.test(plain) && !/^-?\d+(\.\d+)?$/.test(plain) ? `'${plain}` : plain
  return /[",]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless
}
