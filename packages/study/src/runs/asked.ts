/** What every study asks of its request, told in one way. */

/**
 * @param who   what needs them, with its verb: `losses need`
 * @param why   more about it, where the least does not speak for itself
 * @throws RangeError  if replications is no whole number of at least so many
 */
export function checkReplications(replications: unknown, who = 'a study needs', least = 1, why = ''): void {
  if (Number.isInteger(replications) && (replications as number) >= least) return
  const runs = least === 1 ? '1 replication' : `${least} replications`
  const whole = Number.isInteger(replications) ? '' : ', a whole number'
  throw new RangeError(`${who} at least ${runs}${whole}, not ${inWords(replications)}${why}`)
}

/** two of one world or more: what is said of comparisons */
export const ONE_WORLD = ': one world says nothing about chance'

/** @throws RangeError  if the plan is neither missing nor a number from 0 */
export function checkPlan(plan: unknown): void {
  if (plan === null || plan === undefined || (typeof plan === 'number' && plan >= 0 && Number.isFinite(plan))) return
  throw new RangeError(`a plan is so many units per window, from 0, or null for none, not ${inWords(plan)}`)
}

/** @throws RangeError  if the number of threads is no whole number from 0 */
export function checkWorkers(workers: unknown): void {
  if (workers === undefined || (Number.isInteger(workers) && (workers as number) >= 0)) return
  throw new RangeError(`workers must be a whole number, 0 for the calling thread, not ${inWords(workers)}`)
}

const inWords = (value: unknown): string => (typeof value === 'string' ? `the text "${value}"` : String(value))
