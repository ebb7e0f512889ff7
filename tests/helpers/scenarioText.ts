/** A small right scenario as text, for tests that change one thing in it. */
import { readFileSync } from 'node:fs'

const BASE = readFileSync(new URL('scenarios/loop.yaml', import.meta.url), 'utf8')

/** The text with each first member of a pair replaced by the second; an empty first member adds a line at the end. A pair that fits nowhere throws. */
export function scenarioText(...changes: readonly (readonly [from: string, to: string])[]): string {
  return changes.reduce((text, [from, to]) => {
    if (from === '') return `${text}${to}\n`
    if (!text.includes(from)) throw new Error(`the small scenario has no "${from}"`)
    return text.replace(from, () => to)
  }, BASE)
}
