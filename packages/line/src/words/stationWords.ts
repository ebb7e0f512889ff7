/**
 * A station as people find it: "S6 Tightness test"; once where both are the same.
 *
 * @example stationWords({ name: 'S6', title: 'Tightness test' }) // => 'S6 Tightness test'
 */
export function stationWords({ name, title }: { readonly name: string; readonly title: string }): string {
  return name === title ? name : `${name} ${title}`
}
