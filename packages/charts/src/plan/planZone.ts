/** A zone as a plan of the loop takes it. */
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
