/** A station as a plan names it. */
export interface PlanStation {
  readonly title: string
  readonly duties: readonly ('load' | 'unload')[]
  /** short name: "S5"; stands before the title. Default: none */
  readonly key?: string
  /** "moved from Z15", "moves to Z14": it is marked, and this stands with its name. Default: it stays */
  readonly moved?: string
}

/** A zone as a plan of the loop takes it. */
export interface PlanZone {
  readonly name: string
  /** metres, > 0 */
  readonly lengthMetres: number
  /** travel turns here */
  readonly turn: 'left' | 'right' | null
  readonly transfer: boolean
  /** null: no station in this zone */
  readonly station: PlanStation | null
  /** 0 … 1, shades the cell; null: no shade */
  readonly value: number | null
  /** short text in the cell, such as "62"; null: none */
  readonly label: string | null
  /** number of the carrier that is here at the instant that is drawn. Default: none is */
  readonly carrier?: string
  /** a carrier stands here at time 0 of a run: a small square in a corner of the cell. Default: none does */
  readonly starts?: boolean
}

/**
 * "S5 Fan deck"; the title alone where the key says the same, or there is none.
 *
 * @example keyedTitle({ key: 'S5', title: 'Fan deck', duties: [] }) // => 'S5 Fan deck'
 */
export function keyedTitle({ key, title }: PlanStation): string {
  return key === undefined || key === title ? title : `${key} ${title}`
}

/** What a pointer on a zone reads: "Z03, S2 Fit, carrier 7: 62 (share of the shift, %)". */
export function zoneWords({ name, station, transfer, carrier, starts, label }: PlanZone, meaning: string | null): string {
  const says = [
    name,
    ...(station === null ? [] : [keyedTitle(station)]),
    ...(transfer ? ['transfer'] : []),
    ...(carrier === undefined ? [] : [`carrier ${carrier}`]),
    ...(starts === true ? ['a carrier at the start'] : []),
  ]
  return says.join(', ') + (label === null || meaning === null ? '' : `: ${label} (${meaning})`)
}

/** "Carriers: 3 in Z01, 1 in Z04."; "Carriers at the start in Z01, Z04." */
export function carriersOn(zones: readonly PlanZone[]): string[] {
  const found = zones.flatMap(({ name, carrier }) => (carrier === undefined ? [] : [`${carrier} in ${name}`]))
  const first = zones.flatMap(({ name, starts }) => (starts === true ? [name] : []))
  return [
    ...(found.length === 0 ? [] : [`Carriers: ${found.join(', ')}.`]),
    ...(first.length === 0 ? [] : [`Carriers at the start in ${first.join(', ')}.`]),
  ]
}

/** how carriers are told from numbers of zones, and from the instant of the drawing those of time 0; only what is drawn */
export function carrierSigns(zones: readonly PlanZone[]): string[] {
  return [
    ...(zones.some(({ carrier }) => carrier !== undefined) ? ['A number on a plate of its own: a carrier.'] : []),
    ...(zones.some(({ starts }) => starts === true) ? ['A small square: a carrier, at the start.'] : []),
  ]
}
