/** Rules about runs: how they ended, and what so many of them can say. */
import { outputInterval } from '@loopwright/stats'
import { objectsOf } from '../document.ts'
import type { Judged } from '../rules.ts'

/** A document with a run that ended out of products goes with a text that says so. */
export function listEndIsSaid({ text, json, command }: Judged): string[] {
  if (command.name === 'trace') return []
  const ended = objectsOf(json).some(
    ({ outOfProducts, reason }) => (typeof outOfProducts === 'number' && outOfProducts > 0) || reason === 'out of products',
  )
  return ended && !/list of products (ran|has run)/.test(text.replace(/\s+/g, ' '))
    ? ['the list of products ran out, and nobody says so']
    : []
}

/** Units of the same runs have the same interval, whichever command tells them. */
export function oneInterval({ json }: Judged): string[] {
  return objectsOf(json).flatMap(({ units, mean }) => {
    if (!Array.isArray(units) || units.length < 2 || units.some((made) => typeof made !== 'number')) return []
    const { halfWidth, n, level } = (mean ?? {}) as Record<string, unknown>
    if (typeof halfWidth !== 'number' || n !== units.length) return []
    const own = outputInterval(units as number[], level as number).halfWidth
    return Math.abs(own - halfWidth) <= 1e-9 * Math.max(1, own) ? [] : [`± ${halfWidth} of runs that say ± ${own}`]
  })
}

/** pairs that it takes */
const PAIRS_MIN = 20

/** What the same worlds were worth is not known from a few of them. */
export function pairingHasRuns({ text, json }: Judged): string[] {
  const said = /Independent runs would need|do not share their chance events/.exec(text.replace(/\s+/g, ' '))
  const pairs = objectsOf(json).flatMap(({ pairingGain, n }) => (typeof pairingGain === 'number' && typeof n === 'number' ? [n] : []))
  return said === null || pairs.length === 0 || Math.max(...pairs) >= PAIRS_MIN ? [] : [`${said[0]}: by ${Math.max(...pairs)} runs`]
}
