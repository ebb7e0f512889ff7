/** The loop on paper, to scale, as SVG text. */
export interface PlanZone {
  readonly name: string
  /** metres, > 0 */
  readonly lengthMetres: number
  /** travel turns here */
  readonly turn: 'left' | 'right' | null
  readonly transfer: boolean
  /** null: no station in this zone */
  readonly station: { readonly title: string; readonly duties: readonly ('load' | 'unload')[] } | null
  /** 0 … 1, shades the cell; null: no shade */
  readonly value: number | null
  /** short text in the cell, such as "62"; null: none */
  readonly label: string | null
}

export interface PlanOptions {
  /** pixels; the drawing is made for this width. Show one of 360 on phones and one of 1100 elsewhere. Default: 1100 */
  readonly widthPixels?: number
  /** starts every id in the SVG; give each drawing of a page its own. Default: "plan" */
  readonly id?: string
  /** what shade and label mean: "share of the shift with a carrier in the zone, %"; null: nothing is shaded. Default: null */
  readonly valueMeaning?: string | null
}

export interface LoopPlan {
  /** one `<svg>` element with `<title>` and `<desc>`, role img; colours by CSS variables of `themeCss`, each with a fall-back */
  readonly svg: string
  readonly title: string
  /** the text alternative */
  readonly description: string
  /** drawn as a closed loop to scale; else as a ring, and `note` says why */
  readonly toScale: boolean
  /** the line under the drawing; null: none */
  readonly note: string | null
}

export function loopPlan(_zones: readonly PlanZone[], _options: PlanOptions = {}): LoopPlan {
  throw new Error('under construction')
}
