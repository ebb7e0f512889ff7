/** What is told in one line above the figures of a setting: of what they are, and from how many windows. */
import { counted } from '../words/countedWords.ts'
import type { ToldSetting } from './liveTold.ts'

/**
 * @param changed  something is set
 * @param named    number of carriers that the answer of the page names first; null: none
 * @example stateWords({ simulated: '320 shifts', last: true, carriers: 12 }, false, 11) // => 'Nothing is changed: the line as the file has it, with 12 carriers; 320 shifts. The answer above is about 11.'
 */
export function stateWords(
  { simulated, last, carriers }: Pick<ToldSetting, 'simulated' | 'last' | 'carriers'>,
  changed: boolean,
  named: number | null,
): string {
  const narrow = last ? '' : ' so far; the intervals narrow …'
  if (changed) return `${simulated} of each${narrow === '' ? '.' : narrow}`
  const answer = named === null || named === carriers ? '' : ` The answer above is about ${named}.`
  return `Nothing is changed: the line as the file has it, with ${counted(carriers, 'carrier')}; ${simulated}${narrow === '' ? '.' : narrow}${answer}`
}
