/** Options that had another name: who types the old one is told the new one. */

interface Renamed {
  readonly now: string
  /** what it means, in place of a plain "is called" */
  readonly says: string
}

const RENAMED: Readonly<Record<string, Readonly<Record<string, Renamed>>>> = {
  order: {
    '--mine': { now: '--try', says: 'an order to try as it is' },
    '--keep': { now: '--stay', says: 'stations that stay where they are' },
    '--delta': { now: '--least-gain', says: 'the smallest gain worth caring about, in units' },
    '--replications': { now: '--check-replications', says: 'windows that check the chosen order; the choice takes as many as it needs' },
  },
  carriers: {
    '--replications': { now: '--at-most', says: 'the most windows for one number of carriers; the answer takes as many as it needs' },
  },
  steady: { '--replications': { now: '--runs', says: 'how many long runs' } },
}

/**
 * @param command  such as `order`
 * @param option   as it was typed, without a value
 * @returns        null where it never had that name
 * @example renamedOption('order', '--mine') // => '"order" has no option --mine; it is called --try now: an order to try as it is'
 */
export function renamedOption(command: string, option: string): string | null {
  const renamed = RENAMED[command]?.[option]
  return renamed === undefined ? null : `"${command}" has no option ${option}; it is called ${renamed.now} now: ${renamed.says}`
}
