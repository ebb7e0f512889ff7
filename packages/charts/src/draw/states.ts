/** The ten states of a station: their order, the letter and the word that a bar carries, their colours. */
import type { STATION_STATES, StationState } from '@loopwright/line'

/** The order of the engine's results; the type holds the two lists equal. (MODEL.md §11) */
export const STATES: typeof STATION_STATES = [
  'working',
  'handling',
  'waiting for operator',
  'waiting for product',
  'waiting for receiver',
  'blocked',
  'exchanging',
  'starved',
  'stopped',
  'break',
]

/** How a state of a station is shown: by letter and word, and by colour. */
export interface StateLook {
  /** one or two letters, for segments too narrow for the word */
  readonly letter: string
  /** what a segment says where there is room */
  readonly word: string
  /** on white paper */
  readonly light: string
  /** the same hue, lighter, on dark paper */
  readonly dark: string
}

/**
 * Light: Paul Tol, Colour Schemes, SRON technical note EPS/TN/09-002, scheme "muted" (values from memory).
 * Dark: the same hues with lightness raised in OKLab; pale grey, already light, is lowered so that breaks do not outshine the rest.
 */
export const STATE_LOOKS: Readonly<Record<StationState, StateLook>> = {
  working: { letter: 'W', word: 'working', light: '#332288', dark: '#8483f0' },
  handling: { letter: 'H', word: 'handling', light: '#117733', dark: '#419c56' },
  'waiting for operator': { letter: 'O', word: 'for operator', light: '#999933', dark: '#aaab47' },
  'waiting for product': { letter: 'P', word: 'for product', light: '#88ccee', dark: '#8ed2f4' },
  'waiting for receiver': { letter: 'R', word: 'for receiver', light: '#aa4499', dark: '#e97ed5' },
  blocked: { letter: 'B', word: 'blocked', light: '#cc6677', dark: '#e27a8a' },
  exchanging: { letter: 'E', word: 'exchanging', light: '#44aa99', dark: '#54b9a7' },
  starved: { letter: 'S', word: 'starved', light: '#ddcc77', dark: '#e6d580' },
  stopped: { letter: 'St', word: 'stopped', light: '#882255', dark: '#c86090' },
  break: { letter: 'Br', word: 'break', light: '#dddddd', dark: '#86868a' },
}
