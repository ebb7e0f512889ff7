import { loopPlan, type PlanZone } from '@loopwright/charts'

/** pixels: for wide screens, for a screen of 360, for paper */
const WIDTHS = { wide: 1100, narrow: 328, paper: 640 }

/** The drawings of a plan; the style sheet shows the one that fits. `id` starts the ids within. */
export function planHtml(plan: { readonly zones: readonly PlanZone[]; readonly valueMeaning: string | null }, id: string): string {
  const { zones, valueMeaning } = plan
  return Object.entries(WIDTHS)
    .map(([name, widthPixels]) => `<div class="${name}">${loopPlan(zones, { id: `${id}-${name}`, widthPixels, valueMeaning }).svg}</div>`)
    .join('')
}
