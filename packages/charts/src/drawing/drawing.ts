/** A chart as plain data: axes and marks in the units of the axes. `drawingSvg` makes a picture of it, of any width, in a browser or without one. */
import type { Ink, Rim } from './ink.ts'

/** A chart as plain data: axes, and marks in their units. */
export interface Drawing {
  /** pixels between the axes; the same for every width */
  readonly heightPixels: number
  /** the level axis */
  readonly across: Axis
  /** the upright axis; for rows from above, `from` is the larger number */
  readonly up: Axis
  /** what a mark means that says it nowhere itself; stands above, in as many lines as it takes */
  readonly key?: readonly KeyEntry[]
  /** drawn in this order */
  readonly marks: readonly Mark[]
  /** pixels to the right of the area, for words there. Default: 6 */
  readonly rightPixels?: number
  /** a reader's script marks a place on it: the picture says where its area begins and ends. Default: false */
  readonly followed?: boolean
  /** what the key of the choice is called that a click on a mark makes. Default: none */
  readonly choice?: string
}

export interface Axis {
  /** value at the left, or at the bottom */
  readonly from: number
  /** value at the right, or at the top */
  readonly to: number
  /** with its unit; '': none */
  readonly title: string
  /** default: round numbers */
  readonly ticks?: readonly Tick[]
  /** lines through the area at the ticks. Default: false */
  readonly grid?: boolean
  /** each step ten times the one before. Default: false, steps of equal length */
  readonly tenfold?: boolean
  /** marked as not beginning at 0. Default: false */
  readonly cut?: boolean
  /** of the level axis: above the area. Default: false */
  readonly above?: boolean
}

export interface Tick {
  readonly at: number
  readonly text: string
}

export interface KeyEntry {
  readonly text: string
  /** a square, a piece of line, or a dot */
  readonly sample: 'area' | 'line' | 'dot'
  readonly ink: Ink
  readonly dash?: readonly number[]
  readonly shape?: Shape
}

/** A value of the axis, or one of its ends. */
export type At = number | 'from' | 'to'

export type Shape = 'circle' | 'square' | 'diamond' | 'up' | 'down' | 'right' | 'left' | 'cross'

export type Mark = Area | Path | Rule | Dot | Words

interface Touched {
  /** said of the mark when it is pointed at or tapped */
  readonly tip?: string
  /** key of the view that a click chooses */
  readonly pick?: string
}

export interface Area extends Touched {
  readonly mark: 'area'
  readonly x: readonly [At, At]
  readonly y: readonly [At, At]
  readonly ink: Ink
  /** the longest of these that fits stands in it */
  readonly words?: readonly string[]
  readonly wordsInk?: Ink
}

/** A line through points, cut off at the edges of the area. */
export interface Path {
  readonly mark: 'path'
  readonly points: readonly (readonly [x: number, y: number])[]
  readonly ink: Ink
  readonly dash?: readonly number[]
}

/** A straight line, cut off at the edges of the area. */
export interface Rule extends Touched {
  readonly mark: 'rule'
  readonly x: readonly [At, At]
  readonly y: readonly [At, At]
  readonly ink: Ink
  readonly dash?: readonly number[]
  /** pixels of short strokes across its ends. Default: 0, none */
  readonly ends?: number
  /** pixels to the right, of each end. Default: none */
  readonly dx?: readonly [number, number]
}

export interface Dot extends Touched {
  readonly mark: 'dot'
  readonly x: At
  readonly y: At
  readonly ink: Ink
  /** default: a circle */
  readonly shape?: Shape
  /** pixels from the middle to the edge. Default: 4 */
  readonly radius?: number
  /** pixels to the right, and down */
  readonly dx?: number
  readonly dy?: number
}

export interface Words {
  readonly mark: 'words'
  readonly x: At
  readonly y: At
  /** one line, or several below each other */
  readonly text: string | readonly string[]
  readonly ink: Ink
  /** which of its ends stands at x. Default: start */
  readonly align?: 'start' | 'middle' | 'end'
  /** the edge of the first line that stands at y. Default: middle */
  readonly edge?: 'top' | 'middle' | 'bottom'
  /** pixels to the right, and down */
  readonly dx?: number
  readonly dy?: number
  /** what shows between it and other marks: paper, or the plate of words on hatching. Default: nothing */
  readonly rim?: Rim
  /** what stands at the other end of the same line: this text is shortened so that both have room */
  readonly beside?: string
  /** along the level axis, what the text may take; a longer one is left out. Default: as much as it takes */
  readonly room?: number
  readonly tip?: string
}
