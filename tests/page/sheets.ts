/** What is wrong with how a page lies on paper, seen on the sheets that a browser prints: each fault in words. Debian's poppler-utils reads them. */
import { spawnSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { install } from './chromium.ts'

/** dots an inch: a line of small print is one or two dots high */
const DOTS = 20
/** millimetres of a sheet above and below what may be printed on: the margin, and the number of the page in the lower one */
const [ABOVE_MM, BELOW_MM] = [16, 17]
/** grey from which a dot is ink; paper is 255 */
const INK = 235
/** share of what may be printed on that is used down to the last line of a sheet: of the first one, of others, of the last one, which ends where the page ends */
const LEAST = { first: 0.6, other: 0.45, last: 0.2 }

export interface Sheet {
  /** share of what may be printed on down to the last line */
  readonly full: number
  /** in the order of reading, without the running title and the number */
  readonly lines: readonly string[]
}

/** Whether sheets can be read here; with CI=true it is an error if not. */
export function canReadSheets(): boolean {
  const found = spawnSync('pdftoppm', ['-v'], { stdio: 'ignore' }).error === undefined || install('poppler-utils')
  if (!found && process.env.CI === 'true') throw new Error('no pdftoppm: install poppler-utils')
  return found
}

/** Prints the page, which is as long as it likes. */
export async function sheetFaults(page: Page, folder: string, format: 'A4' | 'Letter'): Promise<string[]> {
  const heads = await page.evaluate<Heads>(HEADS)
  const file = join(folder, `sheets-${format}.pdf`)
  writeFileSync(file, await page.pdf({ format }))
  return faultsOf(sheetsOf(file, folder), heads)
}

/** What stands above something: its words, and of the heads of tables the first column. */
interface Heads {
  readonly titles: readonly string[]
  readonly tables: readonly { readonly first: string; readonly words: readonly string[] }[]
  /** the first sheet says what the answer rests on */
  readonly handout: boolean
}

const HEADS = `(() => {
  const told = (element) => element.innerText.replaceAll('\\u00ad', '').trim()
  const lines = (element) => told(element).split('\\n').map((each) => each.trim()).filter((each) => each !== '')
  return {
    titles: [...document.querySelectorAll('h2, h3, h4, .caption')].map((each) => told(each).replace(/\\s*#$/, '')),
    tables: [...document.querySelectorAll('thead tr')].map((row) => ({ first: lines(row.cells[0]).at(-1) ?? '', words: told(row).split(/\\s+/) })),
    handout: document.querySelector('.handout') !== null,
  }
})()`

const squeezed = (text: string): string => text.replace(/\s+/g, '')

function faultsOf(sheets: readonly Sheet[], { titles, tables, handout }: Heads): string[] {
  const faults: string[] = []
  const ends = titles.map(squeezed)
  for (const [index, { full, lines }] of sheets.entries()) {
    const named = `sheet ${index + 1} of ${sheets.length}`
    const isLast = index === sheets.length - 1
    const least = isLast ? LEAST.last : index === 0 ? LEAST.first : LEAST.other
    if (full < least && sheets.length > 1) faults.push(`${named} is ${Math.round(full * 100)} % full`)
    const line = lines.at(-1) ?? ''
    const words = line.trim().split(/\s+/)
    const isTitle = line.trim().length > 3 && ends.some((title) => title.endsWith(squeezed(line)))
    const isHead = tables.some(
      (head) => words[0] === head.first.split(/\s+/)[0] && words.length > 1 && words.every((each) => head.words.includes(each)),
    )
    if (isTitle || isHead) faults.push(`${named} ends with a head that has nothing below it: “${line.trim()}”`)
  }
  if (handout && !sheets[0]!.lines.some((line) => line.includes('What it rests on')))
    faults.push('the first sheet does not say what the answer rests on')
  return faults
}

function sheetsOf(pdf: string, folder: string): Sheet[] {
  const text = join(folder, 'sheets.txt')
  const run = (program: string, words: readonly string[]): Buffer => {
    const { status, stdout, stderr } = spawnSync(program, words, { maxBuffer: 2 ** 30 })
    if (status !== 0) throw new Error(`${program}: ${stderr}`)
    return stdout
  }
  run('pdftotext', ['-layout', pdf, text])
  const told = readFileSync(text, 'utf8').split('\f')
  return fillsOf(run('pdftoppm', ['-gray', '-r', String(DOTS), pdf])).map((full, index) => ({
    full,
    lines: (told[index] ?? '').split('\n').filter((line) => line.trim() !== '' && !/^\s*\d+ \/ \d+$/.test(line)),
  }))
}

/** Of pictures in the portable greymap format (PGM), one behind the other. */
function fillsOf(pictures: Buffer): number[] {
  const fills: number[] = []
  for (let at = 0; at < pictures.length; ) {
    const [head, wide, high] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pictures.toString('latin1', at, at + 40))!
    const [width, height] = [Number(wide), Number(high)]
    const dots = pictures.subarray(at + head.length, at + head.length + width * height)
    const top = Math.round((ABOVE_MM / 25.4) * DOTS)
    const bottom = height - Math.round((BELOW_MM / 25.4) * DOTS)
    const used = dots.subarray(top * width, bottom * width).findLastIndex((grey) => grey < INK)
    fills.push(Math.max(0, used) / width / (bottom - top))
    at += head.length + width * height
  }
  return fills
}
