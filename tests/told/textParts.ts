/** A told text taken apart: sentences, rows of tables, pairs of mean and interval. */

/** Paragraphs without their line breaks; tables are left out. */
export const paragraphsOf = (text: string): string[] =>
  blocksOf(text)
    .filter((block) => !isTable(block))
    .flatMap((block) => block.split(/\n(?=- )/))
    .map((block) => block.replace(/\s+/g, ' ').trim())
    .filter((paragraph) => paragraph !== '')

/** "9 carriers make 3.5 units. The plan …" → two. Dots within numbers end nothing. */
export const sentencesOf = (text: string): string[] =>
  paragraphsOf(text).flatMap((paragraph) => paragraph.split(/(?<=[.:;])\s+(?=[A-ZÄÖÜ0-9"“])/))

/** What stands between two or more blanks, in every line of a table; of a word broken for its heading the first half. */
export const cellsOf = (text: string): string[] =>
  blocksOf(text)
    .filter(isTable)
    .flatMap((block) => block.split('\n'))
    .filter((line) => / {2,}/.test(line.replace(/^> /, '  ').trim()) || /^\s{2,}/.test(line))
    .flatMap((line) => line.replace(/^> /, '  ').trim().split(/ {2,}/))
    .map((cell) => cell.replace(/-$/, ''))
    .filter((cell) => cell !== '')

/** Lines about a table that are sentences: its caption, and a note under it. */
export const notesOf = (text: string): string[] => blocksOf(text).filter(isTable).flatMap(sentencesAbout)

function sentencesAbout(block: string): string[] {
  const parts: string[][] = [[]]
  for (const line of block.split('\n')) {
    if (/^\S/.test(line) && !line.startsWith('> ') && !/ {2,}/.test(line)) parts.at(-1)!.push(line)
    else parts.push([])
  }
  // what a terminal has no room for is its own remark
  return parts.map((lines) => lines.join(' ').replace(/ ?Left out here for want of room: [^.]*\.$/, '')).filter((note) => note !== '')
}

const blocksOf = (text: string): string[] => text.split(/\n\s*\n/)
const isTable = (block: string): boolean => block.split('\n').filter((line) => /\S {2,}\S/.test(line)).length > 1

export interface Pair {
  /** as it stands in the text */
  readonly said: string
  readonly mean: number
  readonly half: number
  /** of each, how many decimals are told */
  readonly meanDecimals: number
  readonly halfDecimals: number
}

const NUMBER = '[−-]?[\\d\\u2009\\u202f\\u00a0,]*\\d(?:\\.\\d+)?'

/** "214 ± 5", "214, known to ± 5". */
export function pairsOf(text: string): Pair[] {
  const flat = text.replace(/\n(?!\n)/g, '\n ')
  const pattern = new RegExp(
    `(?<![\\d.])(${NUMBER})(?: units?| an hour| per hour)?(?:,\\s+known\\s+to)?\\s±\\s+(${NUMBER})(?!\\s*%\\s*(?:spread|of))`,
    'g',
  )
  return [...flat.matchAll(pattern)].map(([said, mean, half]) => ({
    said: said.replace(/\s+/g, ' '),
    mean: numberOf(mean!),
    half: numberOf(half!),
    meanDecimals: /\./.test(mean!) ? decimalsOf(mean!) : Math.max(decimalsOf(mean!), Math.min(0, decimalsOf(half!))),
    halfDecimals: decimalsOf(half!),
  }))
}

export const numberOf = (said: string): number => Number(said.replace('−', '-').replace(/[\u2009\u202f\u00a0,]/g, ''))
/** Of "0.25" 2, of "25" 0, of "250" −1: it may be rounded to tens. */
const decimalsOf = (said: string): number => said.split('.')[1]?.length ?? -(/(?<=[1-9][\d,]*)0+$/.exec(said)?.[0].length ?? 0)
export const rounds = (value: number, told: number, decimals: number): boolean => Math.abs(value - told) <= 0.5 * 10 ** -decimals + 1e-9
