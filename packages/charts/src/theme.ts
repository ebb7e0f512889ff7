/** One look for page, chart and print. */
import type { Config } from 'vega-lite'

/** `page` colours by CSS variables, so that one drawing serves light, dark and print; the others stand alone. */
export type Look = 'page' | 'light' | 'dark' | 'print'

/** The `config` to hand to vega-lite or vega-embed beside a spec. */
export function vegaConfig(_look: Look): Config {
  throw new Error('under construction')
}

/** CSS that declares the variables of the look `page`: light, dark by preference, black on white in print. Goes into the page's style sheet once. */
export function themeCss(): string {
  throw new Error('under construction')
}

/** A hidden `<svg>` with the hatchings that print uses. Goes into the page once, anywhere in the body. */
export function hatchings(): string {
  throw new Error('under construction')
}
