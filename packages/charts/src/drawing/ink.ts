/** How each kind of mark is painted: colours by name, so that a look can be chosen when it is drawn. */
import { SMALL_SIZE, TEXT_SIZE, palette } from '../draw/theme.ts'
import type { Look } from '../draw/theme.ts'

/** `state 3`, `ramp 4` and the like: the colour of that number, and `on …` the text that can be read on it */
export type Ink = keyof typeof INKS | `state ${number}` | `on state ${number}` | `ramp ${number}` | `on ramp ${number}`

/** what shows around words: paper, or the plate of words on hatching */
export type Rim = 'paper' | 'plate'

interface Paint {
  readonly fill?: string
  readonly stroke?: string
  /** pixels of the stroke */
  readonly width?: number
  readonly dash?: readonly number[]
  /** pixels of text */
  readonly size?: number
  readonly bold?: boolean
  readonly opacity?: number
}

const INKS = {
  band: { fill: 'band' },
  bandEdge: { stroke: 'quiet', width: 1 },
  whisker: { stroke: 'ink', width: 1.6 },
  line: { stroke: 'ink', width: 1 },
  thin: { stroke: 'quiet', width: 1 },
  grid: { stroke: 'hairline', width: 1 },
  zero: { stroke: 'ink', width: 1.4 },
  dot: { fill: 'ink', stroke: 'paper', width: 0.8 },
  openDot: { fill: 'paper', stroke: 'ink', width: 1.4 },
  chosenDot: { fill: 'accent', stroke: 'paper', width: 1.5 },
  chosenLine: { stroke: 'accent', width: 1.4 },
  chosenWords: { fill: 'accent', size: TEXT_SIZE, bold: true },
  law: { stroke: 'quiet', width: 1.4 },
  plan: { stroke: 'ink', width: 1.4, dash: [6, 4] },
  planWords: { fill: 'ink', size: TEXT_SIZE, bold: true },
  words: { fill: 'ink', size: TEXT_SIZE },
  strong: { fill: 'ink', size: TEXT_SIZE, bold: true },
  note: { fill: 'quiet', size: SMALL_SIZE },
  bar: { fill: 'ramp 4', stroke: 'ink', width: 0.6 },
  barPale: { fill: 'ramp 1', stroke: 'ink', width: 0.6 },
  work: { fill: 'ramp 7', stroke: 'ink', width: 0.6 },
  wait: { fill: 'ramp 3', stroke: 'ink', width: 0.6 },
  move: { fill: 'ramp 0', stroke: 'ink', width: 0.6 },
  pause: { fill: 'band' },
  ghost: { stroke: 'accent', width: 1.6 },
  travel: { stroke: 'quiet', width: 1.3 },
  spanWork: { stroke: 'ink', width: 6 },
  spanWait: { stroke: 'ramp 3', width: 6 },
  spanHeld: { stroke: 'state 8', width: 6 },
  baseCell: { stroke: 'ink', width: 2, dash: [5, 3] },
  chosenCell: { stroke: 'accent', width: 3 },
  hit: { fill: 'ink', opacity: 0 },
  paper: { fill: 'paper' },
} as const satisfies Record<string, Paint>

/** What an ink is made of, colours still by name. */
export function paintOf(ink: Ink): Paint {
  if (ink in INKS) return INKS[ink as keyof typeof INKS]
  if (ink.startsWith('on ')) return { fill: ink, size: SMALL_SIZE }
  return ink.startsWith('state ') ? { fill: ink, stroke: 'ink', width: 0.6 } : { fill: ink }
}

/**
 * The attributes that paint a mark in a look.
 *
 * @example inkAttributes('band', 'light') // => ' fill="#e2e3e9"'
 */
export function inkAttributes(ink: Ink, look: Look): string {
  const { fill, stroke, width, dash, size, bold, opacity } = paintOf(ink)
  return [
    ` fill="${fill === undefined ? 'none' : colourOf(fill, look)}"`,
    stroke === undefined ? '' : ` stroke="${colourOf(stroke, look)}" stroke-width="${width}"`,
    dash === undefined ? '' : ` stroke-dasharray="${dash.join(' ')}"`,
    size === undefined ? '' : ` font-size="${size}"`,
    bold === true ? ' font-weight="600"' : '',
    opacity === undefined ? '' : ` opacity="${opacity}"`,
  ].join('')
}

/**
 * The attributes of a rim around words.
 *
 * @example rimAttributes('paper', 'light') // => ' stroke="#ffffff" stroke-width="4" stroke-linejoin="round" paint-order="stroke"'
 */
export function rimAttributes(rim: Rim, look: Look): string {
  return ` stroke="${colourOf(rim, look)}" stroke-width="4" stroke-linejoin="round" paint-order="stroke"`
}

/**
 * A colour by its name.
 *
 * @throws RangeError  if there is none of that name
 * @example colourOf('ramp 0', 'page') // => 'var(--lw-ramp-0)'
 */
export function colourOf(name: string, look: Look): string {
  const of = palette(look)
  const [, list, index] = /^(.*?)(?: (\d+))?$/.exec(name)!
  const lists: Readonly<Record<string, readonly string[]>> = {
    state: of.states,
    'on state': of.onStates,
    ramp: of.ramp,
    'on ramp': of.onRamp,
  }
  const found = index === undefined ? (of as unknown as Readonly<Record<string, unknown>>)[name] : lists[list!]?.[Number(index)]
  if (typeof found !== 'string') throw new RangeError(`no colour is called "${name}"`)
  return found
}
