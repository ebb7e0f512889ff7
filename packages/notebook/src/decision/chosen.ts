/** The alternative that a section of a decision file speaks of. */
import type { Decision } from '@loopwright/decide'
import type { Scenario } from '@loopwright/scenario'

/** Which of the alternatives, by its place in the file. */
export interface ChosenAlternative {
  readonly of: number
  readonly name: string
}

/**
 * The alternative of which a promise or an acceptance is told.
 *
 * @param file  of the decision, as the reader would type it
 * @throws RangeError  where the file has no such section
 * @example chosenAlternative({ alternatives: [{ name: 'today' }, { name: 'loop' }], promise: { of: 1 }, acceptance: null }, 'promise', 'loop.decision.yaml') // => { of: 1, name: 'loop' }
 */
export function chosenAlternative(
  decision: Pick<Decision, 'promise' | 'acceptance'> & { readonly alternatives: readonly { readonly name: string }[] },
  section: 'promise' | 'acceptance',
  file: string,
): ChosenAlternative {
  const found = decision[section]
  if (found === null) throw new RangeError(`there is no ${section} in ${file}: write it under "${section}:"`)
  return { of: found.of, name: decision.alternatives[found.of]!.name }
}

/**
 * What is told by shifts needs a scenario that judges one.
 *
 * @param what  begins the sentence, such as `a promise is`
 * @throws RangeError  where it has no calendar, or judges several
 * @example needsShift({ name: 'six', calendar: { shifts: 1 } }, 'a promise is') // => undefined
 */
export function needsShift(
  { name, calendar }: Pick<Scenario, 'name'> & { readonly calendar: Pick<NonNullable<Scenario['calendar']>, 'shifts'> | null },
  what: string,
): void {
  if (calendar?.shifts !== 1) throw new RangeError(`${what} by shifts: "${name}" needs a calendar that judges one shift`)
}
