/** A small right scenario as text, for tests that change one thing in it. */

const BASE = `format: 1
question: What does this loop make?
name: Ten zones
warmup: 1 h
length: 8 h
drive: { speed: 12 m/min, acceleration: 0.5 m/s² }
carriers: { count: 4, length: 0.8 m, width: 0.8 m }
loop: 10 zones of 1 m
stations:
  Load: { zone: Z01, load: { place: 30 s ± 10 % } }
  Fit: { zone: Z04, work: { fit: 40 s ± 10 % } }
  Unload: { zone: Z08, unload: { take: 20 s ± 10 % } }
`

/** The text with each first member of a pair replaced by the second; an empty first member adds a line at the end. A pair that fits nowhere throws. */
export function scenarioText(...changes: readonly (readonly [from: string, to: string])[]): string {
  return changes.reduce((text, [from, to]) => {
    if (from === '') return `${text}${to}\n`
    if (!text.includes(from)) throw new Error(`the small scenario has no "${from}"`)
    return text.replace(from, () => to)
  }, BASE)
}
