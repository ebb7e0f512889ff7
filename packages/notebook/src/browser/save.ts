/** What a reader takes out of the page: a figure as SVG, PNG or CSV, a sentence with its number. Nothing leaves the page but what is saved. */

const BYTES_OF_MARK = '\ufeff'
/** pixels of a PNG for one of the drawing */
const ZOOM = 2

/** Offers it beside the numbers of each figure. */
export function offerSaves(): void {
  for (const details of document.querySelectorAll<HTMLDetailsElement>('figure > details, .leadnumbers > details')) {
    const figure = details.closest('figure') ?? document.getElementById(details.closest('.leadnumbers')!.id.replace(/-numbers$/, ''))
    if (figure === null) continue
    const line = document.createElement('p')
    line.className = 'saves'
    const status = document.createElement('span')
    status.setAttribute('role', 'status')
    const button = (label: string, name: string, does: () => Promise<string> | string): HTMLButtonElement => {
      const made = document.createElement('button')
      made.type = 'button'
      made.textContent = label
      made.setAttribute('aria-label', name)
      made.addEventListener('click', () => {
        void Promise.resolve()
          .then(does)
          .then(
            (said) => {
              status.textContent = said
            },
            () => {
              status.textContent = 'That did not work in this browser.'
            },
          )
      })
      return made
    }
    const id = figure.id
    line.append(
      'Save as ',
      button('SVG', 'Save this figure as SVG', () => saved(`${id}.svg`, new Blob([figureSvg(figure).text], { type: 'image/svg+xml' }))),
      ' ',
      button('PNG', 'Save this figure as PNG', async () => saved(`${id}.png`, await figurePng(figure))),
      ' ',
      button('CSV', 'Save these numbers as CSV', () => saved(`${id}.csv`, new Blob([BYTES_OF_MARK, csvOf(details)], { type: 'text/csv' }))),
      ' ',
      button('Copy sentence', 'Copy sentence with its number', async () => {
        await navigator.clipboard.writeText(sentenceOf(figure))
        return 'Copied.'
      }),
      ' ',
      status,
    )
    details.querySelector('summary')?.after(line)
  }
}

function saved(name: string, content: Blob): string {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(content)
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000)
  return `Saved as ${name}.`
}

/** The answer's first sentence where the figure proves it, else what the figure says; with the question, and an address where the page has one. */
function sentenceOf(figure: Element): string {
  const answer = figure.closest('.answer')
  const said = (answer?.querySelector('.first') ?? figure.querySelector('.finding'))?.textContent?.trim() ?? ''
  const where = document.querySelector('.where')?.textContent?.trim() ?? ''
  const address = location.protocol === 'file:' ? '' : `\n${location.href.replace(/#.*$/, '')}#${figure.id}`
  return `${said}\n(${document.title} ${where})${address}`
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
function csvOf(details: Element): string {
  const rows = [...details.querySelectorAll('tr')].map((row) =>
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
