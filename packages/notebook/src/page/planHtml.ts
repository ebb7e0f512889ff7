import { type LoopPlan, lineMap, loopPlan, mapWords, type PlanOptions, planWords } from '@loopwright/charts'
import type { Picture } from '../cells/figure.ts'

type Plan = Omit<Extract<Picture, { kind: 'plan' }>, 'kind'>

/** pixels: for wide screens, for a screen of 360, for paper */
const WIDTHS = { wide: 1100, narrow: 328, paper: 640 }

/** The drawings of a plan; the style sheet shows the one that fits. `id` starts the ids within. */
export function planHtml(plan: Plan, id: string): string {
  const { valueMeaning } = plan
  return Object.entries(WIDTHS)
    .map(([name, widthPixels]) => `<div class="${name}">${drawPlan(plan, { id: `${id}-${name}`, widthPixels, valueMeaning }).svg}</div>`)
    .join('')
}

/** What the drawing of a plan says to those who cannot see it. */
export function planAlt({ zones, paths, valueMeaning }: Plan): string {
  return paths === null ? planWords(zones, valueMeaning) : mapWords(zones, paths, valueMeaning)
}

/** One loop to scale, any other line as a map. */
export function drawPlan({ zones, paths }: Pick<Plan, 'zones' | 'paths'>, options: PlanOptions): LoopPlan {
  return paths === null ? loopPlan(zones, options) : lineMap(zones, paths, options)
}
