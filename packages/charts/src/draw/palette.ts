/** The colours of each look, as plain values. */
import { readableOn } from './contrast.ts'
import { STATE_LOOKS, STATES } from './states.ts'

export interface Palette {
  readonly ink: string
  readonly paper: string
  /** secondary text and lines; readable on paper */
  readonly quiet: string
  /** grid and dividing lines; decoration only */
  readonly hairline: string
  /** areas behind the marks; edged by `quiet` where the edge tells something */
  readonly band: string
  /** links and the chosen count */
  readonly accent: string
  /** by STATES */
  readonly states: readonly string[]
  /** text on each of these */
  readonly onStates: readonly string[]
  /** behind text on these; transparent where colour alone is readable */
  readonly plate: string
  /** quantities: from little to much, lightness only */
  readonly ramp: readonly string[]
  readonly onRamp: readonly string[]
  /** differences: from below to above, zero in the middle */
  readonly twoSided: readonly string[]
}

const BLACK_OR_WHITE = ['#000000', '#ffffff']

const LIGHT_RAMP = ['#f3f7ff', '#d8dbe3', '#bcbfc8', '#a2a5ad', '#888b93', '#70727a', '#585a61', '#41434a', '#2b2e34']
const DARK_RAMP = ['#24262c', '#383a41', '#4c4f56', '#62656c', '#797c83', '#90939b', '#a8abb3', '#c1c4cd', '#dbdee6']

export const LIGHT: Palette = {
  ink: '#1b1b1f',
  paper: '#ffffff',
  quiet: '#5b5b63',
  hairline: '#d5d5da',
  band: '#e2e3e9',
  accent: '#b5360a',
  states: STATES.map((state) => STATE_LOOKS[state].light),
  onStates: STATES.map((state) => readableOn(STATE_LOOKS[state].light, ['#1b1b1f', '#ffffff'])),
  plate: 'transparent',
  ramp: LIGHT_RAMP,
  onRamp: LIGHT_RAMP.map((ground) => readableOn(ground, ['#1b1b1f', '#ffffff', ...BLACK_OR_WHITE])),
  twoSided: ['#8a4b12', '#bf8144', '#e3c3a0', '#f2f2f2', '#a9c6dd', '#4f8cbb', '#17527e'],
}

export const DARK: Palette = {
  ink: '#e8e6e3',
  paper: '#17181b',
  quiet: '#a6a5a8',
  hairline: '#3a3b40',
  band: '#33353b',
  accent: '#ff8f66',
  states: STATES.map((state) => STATE_LOOKS[state].dark),
  onStates: STATES.map((state) => readableOn(STATE_LOOKS[state].dark, ['#17181b', '#ffffff'])),
  plate: 'transparent',
  ramp: DARK_RAMP,
  onRamp: DARK_RAMP.map((ground) => readableOn(ground, ['#e8e6e3', '#17181b', ...BLACK_OR_WHITE])),
  twoSided: ['#e9a566', '#b87c45', '#6f5238', '#2c2d31', '#34546d', '#5391bf', '#93c8ee'],
}

/** Black on white: states by hatching, text on white plates. */
export const PRINT: Palette = {
  ...LIGHT,
  ink: '#000000',
  quiet: '#404045',
  accent: '#000000',
  states: STATES.map((_, index) => `url(#lw-hatch-${index})`),
  onStates: STATES.map(() => '#000000'),
  plate: '#ffffff',
}
