/** One look for page, chart and print. */
import type { Config } from 'vega-lite'
import { DARK, LIGHT, type Palette, PRINT } from './palette.ts'
import { STATES } from './states.ts'

/** `page` colours by CSS variables, so that one drawing serves light, dark and print; the others stand alone. */
export type Look = 'page' | 'light' | 'dark' | 'print'

export const FONT = 'system-ui, sans-serif'
/** pixels */
export const TEXT_SIZE = 13
/** pixels; letters in narrow segments, notes on a drawing */
export const SMALL_SIZE = 12
/** lines of the law: carrier-limited, station-limited, space-limited */
export const LAW_DASHES: readonly (readonly number[])[] = [
  [2, 3],
  [1, 0],
  [9, 3, 2, 3],
]

const INK: Palette = {
  ink: 'var(--lw-ink)',
  paper: 'var(--lw-paper)',
  quiet: 'var(--lw-quiet)',
  hairline: 'var(--lw-hairline)',
  band: 'var(--lw-band)',
  accent: 'var(--lw-accent)',
  states: STATES.map((_, index) => `var(--lw-state-${index})`),
  onStates: STATES.map((_, index) => `var(--lw-on-state-${index})`),
  plate: 'var(--lw-plate)',
  ramp: LIGHT.ramp.map((_, index) => `var(--lw-ramp-${index})`),
  onRamp: LIGHT.onRamp.map((_, index) => `var(--lw-on-ramp-${index})`),
  twoSided: LIGHT.twoSided.map((_, index) => `var(--lw-two-sided-${index})`),
}

const PALETTES: Readonly<Record<Look, Palette>> = { page: INK, light: LIGHT, dark: DARK, print: PRINT }

/**
 * The colours of a look.
 *
 * @example palette('light').paper // => '#ffffff'
 */
export function palette(look: Look): Palette {
  return PALETTES[look]
}

/**
 * The `config` to hand to vega-lite or vega-embed beside a spec: the specs themselves name no colour and no font.
 *
 * @example vegaConfig('dark').background // => '#17181b'
 */
export function vegaConfig(look: Look): Config {
  const { ink, paper, quiet, hairline, states, onStates, ramp, onRamp, twoSided } = palette(look)
  return {
    background: look === 'page' ? 'transparent' : paper,
    font: FONT,
    locale: { number: { decimal: '.', thousands: '\u202f', grouping: [3], currency: ['', ''] } },
    view: { stroke: null },
    axis: {
      domainColor: quiet,
      gridColor: hairline,
      tickColor: quiet,
      labelColor: ink,
      titleColor: ink,
      labelFontSize: TEXT_SIZE,
      titleFontSize: TEXT_SIZE,
      titleFontWeight: 'normal',
      labelPadding: 4,
      titlePadding: 8,
      tickSize: 4,
    },
    axisX: { grid: false },
    axisY: { domain: false, ticks: false },
    legend: {
      labelColor: ink,
      labelFontSize: TEXT_SIZE,
      symbolStrokeColor: ink,
      symbolStrokeWidth: 0.6,
      symbolSize: 150,
      symbolType: 'square',
      labelLimit: 0,
    },
    bar: { stroke: ink, strokeWidth: 0.6 },
    range: {
      // the names that a spec may use: states by `category`, text on them by `ordinal`; steps of quantities by `ramp`, text on them by `heatmap`
      category: [...states],
      ordinal: [...onStates],
      ramp: [...ramp],
      heatmap: [...onRamp],
      diverging: [...twoSided],
    },
  }
}

/**
 * CSS that declares the variables of the look `page`: light, dark by preference, black on white in print. Goes into the page's style sheet once.
 *
 * @example themeCss().includes('prefers-color-scheme: dark') // => true
 */
export function themeCss(): string {
  return [
    `:root{color-scheme:light dark;${variables(LIGHT)}}`,
    `@media screen and (prefers-color-scheme: dark){:root{${variables(DARK)}}}`,
    `@media print{:root{color-scheme:light;${variables(PRINT)}}}`,
    'svg text{font-variant-numeric:tabular-nums}',
    '.lw-plan{display:block;max-width:100%;height:auto}',
    '.lw-unseen{position:absolute}',
  ].join('\n')
}

function variables(of: Palette): string {
  return Object.entries(of)
    .flatMap(([name, value]: [string, string | readonly string[]]) => {
      const kebab =
        name === 'twoSided' ? 'two-sided' : name === 'onRamp' ? 'on-ramp' : name.replace(/s$/, '').replace('onState', 'on-state')
      return typeof value === 'string' ? [`--lw-${name}:${value}`] : value.map((colour, index) => `--lw-${kebab}-${index}:${colour}`)
    })
    .join(';')
}
