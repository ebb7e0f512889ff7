/** Axes: room that their words take, lines, ticks and titles. */
import { TEXT_SIZE } from '../draw/theme.ts'
import type { Axis, Drawing, Tick } from './drawing.ts'
import { roundTicks, type Scale } from './scale.ts'
import { type Piece, rulePiece, wordsPiece } from './piece.ts'
import { shortened, textWidth } from './textWidth.ts'

/** pixels */
const TICK_ROW = 20
export const TITLE_ROW = 20
/** pixels between a label and its axis */
const LABEL_GAP = 6
/** pixels between labels side by side */
const LABEL_APART = 10
/** share of the width that labels of the upright axis may take */
const LABELS_SHARE = 0.36
/** steps of an axis without ticks of its own */
const UP_PIECES = 5
const ACROSS_PIXELS = 90

/** Ticks of the upright axis, each no longer than fits. */
export function upTicks(axis: Axis, widthPixels: number): Tick[] {
  const most = widthPixels * LABELS_SHARE
  return (axis.ticks ?? roundTicks(axis, UP_PIECES)).map(({ at, text }) => ({ at, text: shortened(text, most, TEXT_SIZE) }))
}

/** Pixels that labels of the upright axis take, with the gap. */
export function labelsWidth(ticks: readonly Tick[]): number {
  const widest = Math.max(0, ...ticks.map(({ text }) => textWidth(text, TEXT_SIZE)))
  return widest === 0 ? 0 : Math.ceil(widest) + LABEL_GAP
}

/** Upright axis: labels at the left, lines through the area; its title above the area, level. */
export function upAxis({ up }: Drawing, ticks: readonly Tick[], x: Scale, y: Scale): Piece[] {
  const [left, right] = [x.fromPixels, x.toPixels]
  const shown = apart(ticks, y, () => TEXT_SIZE + 2)
  return [
    ...(up.grid === true ? ticks.map(({ at }) => rulePiece([left, y.of(at)], [right, y.of(at)], 'grid')) : []),
    ...shown.map(({ at, text }) => wordsPiece(text, left - LABEL_GAP, y.of(at), { ink: 'words', align: 'end' })),
    ...(up.title === '' ? [] : [wordsPiece(up.title, 0, y.toPixels - TITLE_ROW + 3, { ink: 'note' })]),
    ...(up.cut === true ? cutMark(left, y.fromPixels - 7, true) : []),
  ]
}

/** Level axis: a line, ticks and labels below (or above), the title below them. */
export function acrossAxis({ across }: Drawing, x: Scale, y: Scale): Piece[] {
  const [left, right, base] = [x.fromPixels, x.toPixels, across.above === true ? y.toPixels : y.fromPixels]
  const ticks = across.ticks ?? roundTicks(across, Math.max(2, Math.floor((right - left) / ACROSS_PIXELS)))
  const shown = apart(ticks, x, ({ text }) => textWidth(text, TEXT_SIZE) + LABEL_APART)
  const side = across.above === true ? -1 : 1
  return [
    ...(across.grid === true ? ticks.map(({ at }) => rulePiece([x.of(at), y.toPixels], [x.of(at), y.fromPixels], 'grid')) : []),
    ...(ticks.length === 0 && across.title === '' ? [] : [rulePiece([left, base], [right, base], 'thin')]),
    ...shown.flatMap(({ at, text }) => [
      rulePiece([x.of(at), base], [x.of(at), base + 4 * side], 'thin'),
      wordsPiece(text, inside(x.of(at), textWidth(text, TEXT_SIZE), right + 4), base + 13 * side, { ink: 'words', align: 'middle' }),
    ]),
    ...(across.title === '' ? [] : [wordsPiece(across.title, left, base + (TICK_ROW + 10) * side, { ink: 'note' })]),
    ...(across.cut === true ? cutMark(left + 7, base, false) : []),
  ]
}

/** A label at the end of an axis stays within the picture. */
function inside(x: number, width: number, right: number): number {
  return Math.max(width / 2, Math.min(right - width / 2, x))
}

/** All ticks, or every second, third … so that no label lies on another. */
function apart(ticks: readonly Tick[], scale: Scale, needs: (tick: Tick) => number): readonly Tick[] {
  for (let every = 1; every < ticks.length; every += 1) {
    const shown = ticks.filter((_, index) => index % every === 0)
    const free = shown
      .slice(1)
      .every((tick, index) => Math.abs(scale.of(tick.at) - scale.of(shown[index]!.at)) >= (needs(tick) + needs(shown[index]!)) / 2)
    if (free) return shown
  }
  return ticks.slice(0, 1)
}

/** Two short strokes across an axis that does not begin at 0. */
function cutMark(x: number, y: number, upright: boolean): Piece[] {
  const [dx, dy] = upright ? [5, 2] : [2, 5]
  return [-2.5, 2.5].map((way) => {
    const [atX, atY] = upright ? [x, y + way] : [x + way, y]
    return rulePiece([atX - dx, atY + dy], [atX + dx, atY - dy], 'line')
  })
}

/** Pixels below the area, and above it, that the level axis takes. */
export function acrossRoom({ across }: Drawing): { readonly above: number; readonly below: number } {
  const labels = (across.ticks?.length ?? 1) === 0 ? 0 : TICK_ROW
  const taken = labels + (across.title === '' ? 0 : TITLE_ROW)
  return across.above === true ? { above: taken, below: 4 } : { above: 0, below: taken + 2 }
}
