/** MODEL.md §1 "Clock": every duration is rounded once to a whole multiple of 2⁻²⁰ s, floor(x·2²⁰ + ½)/2²⁰. */
export function onGrid(seconds: number): number {
  return Math.floor(seconds * 2 ** 20 + 0.5) / 2 ** 20
}
