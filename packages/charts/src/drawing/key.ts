/** The key above a drawing: samples and words, in as many lines as the width asks for. */
import { SMALL_SIZE } from '../draw/theme.ts'
import type { KeyEntry } from './drawing.ts'
import { areaPiece, dotPiece, type Piece, rulePiece, wordsPiece } from './piece.ts'
import { shortened, textWidth } from './textWidth.ts'

/** pixels */
const ROW = 18
const APART = 18
const GAP = 6
const SAMPLES = { area: 12, line: 26, dot: 10 } as const

export interface PlacedKey {
  readonly pieces: readonly Piece[]
  readonly heightPixels: number
}

/** Entries from the left, a new line where one no longer fits. */
export function keyPieces(entries: readonly KeyEntry[], widthPixels: number): PlacedKey {
  if (entries.length === 0) return { pieces: [], heightPixels: 0 }
  let [x, row] = [0, 0]
  const pieces = entries.flatMap((entry): Piece[] => {
    const sample = SAMPLES[entry.sample]
    const text = shortened(entry.text, widthPixels - sample - GAP, SMALL_SIZE)
    const wide = sample + GAP + textWidth(text, SMALL_SIZE)
    if (x > 0 && x + wide > widthPixels) [x, row] = [0, row + 1]
    const [left, y] = [x, row * ROW + ROW / 2]
    x += wide + APART
    return [...samplePieces(entry, left, y), wordsPiece(text, left + sample + GAP, y, { ink: 'note' })]
  })
  return { pieces, heightPixels: (row + 1) * ROW + 4 }
}

function samplePieces({ sample, ink, dash, shape }: KeyEntry, left: number, y: number): Piece[] {
  if (sample === 'area') return [areaPiece(left, y - 6, SAMPLES.area, 12, ink)]
  if (sample === 'line') return [rulePiece([left, y], [left + SAMPLES.line, y], ink, { dash })]
  return [dotPiece(left + SAMPLES.dot / 2, y, 4, shape ?? 'circle', ink)]
}
