/** Every sentence that can be said about a decision file, one function each: `message` says what was found, `fix` what would be right. */
import { type Sentence, sentences, sentenceWords } from '@loopwright/line/check'

const { all, choices, quote, meant } = sentenceWords
const error = (code: string, message: string, fix: string): Sentence => ({ code, severity: 'error', message, fix })

export const { missing, wrongType, negative, zero, notWhole, tooSmall } = sentences

export const formatUnknown = (found: string): Sentence =>
  error('E_FORMAT', `format ${found} is not known`, 'write "format: 1" as the first line')

export const isScenario = (): Sentence =>
  error(
    'E_SCENARIO',
    'this is a scenario: it says what a line is, and names no alternatives',
    'give a decision file, which names a scenario under "scenario:" and at least two "alternatives:"',
  )

export const unknownKey = (key: string, near: string | null, known: readonly string[]): Sentence =>
  error('E_UNKNOWN_KEY', `${quote(key)} is not a known key here`, meant(near, `known keys are ${all(known)}`))

export const notAChoice = (found: string, near: string | null, known: readonly string[]): Sentence =>
  error('E_CHOICE', `${quote(found)} is not one of the possible words`, meant(near, `write ${choices(known)}`))

export const unitMissing = (found: string, proposals: readonly string[]): Sentence =>
  error('E_UNIT_MISSING', `${quote(found)} has no unit`, `write it with its unit, such as ${proposals.map(quote).join(' or ')}`)

export const unitUnknown = (unit: string, known: readonly string[]): Sentence =>
  error('E_UNIT_UNKNOWN', `${quote(unit)} is not a unit that is known here`, `use ${all(known)}`)

export const notANumber = (found: string, example: string): Sentence =>
  error('E_NUMBER', `${quote(found)} is not a number with its unit`, `write it like ${quote(example)}`)

export const decimalComma = (found: string, right: string): Sentence =>
  error(
    'E_DECIMAL_COMMA',
    `${quote(found)} has a comma or a blank inside the number`,
    `write ${quote(right)}: the decimal sign is a point, and nothing parts thousands`,
  )

export const otherCurrency = (found: string, first: string): Sentence =>
  error('E_CURRENCY', `this is in ${found}, and an amount before it in ${first}`, 'write all amounts in one currency')

export const doubtOdd = (found: string): Sentence =>
  error('E_DOUBT', `${quote(found)} is not a doubt from 0 to 100 %`, 'write it like "410000 € ± 20 %"')

export const tooBig = (found: string, most: string): Sentence => error('E_TOO_BIG', `${quote(found)} is too large`, `the most is ${most}`)

export const notNamed = (what: string, name: string, near: string | null, known: readonly string[]): Sentence =>
  error(
    'E_NOT_NAMED',
    `there is no ${what} called ${quote(name)}`,
    meant(near, known.length === 0 ? `there is no ${what}` : `there is ${all(known)}`),
  )

export const tooFew = (what: string, found: number, least: number): Sentence =>
  error('E_TOO_FEW', `there ${found === 1 ? 'is' : 'are'} ${found} ${what}`, `give at least ${least}`)

export const weightsOff = (sum: number): Sentence =>
  error('E_WEIGHTS', `the weights sum to ${sum}`, 'change them so that they sum to 100: agree on them before anybody scores')

export const scoreOdd = (found: string): Sentence =>
  error('E_SCORE', `${quote(found)} is not a score`, 'write a whole number from 1 to 5, as the anchors say')

export const scoreComputed = (criterion: string, by: string): Sentence =>
  error(
    'E_SCORE_COMPUTED',
    `the score of ${quote(criterion)} is computed from ${by}`,
    'leave it out here, or take "from" out of the criterion',
  )

export const onlyOneSource = (keys: readonly string[]): Sentence =>
  error(
    'E_ONLY_ONE_OF',
    `${keys.map(quote).join(' and ')} do not go together`,
    'an alternative is a file, a variation or a set of changes: keep one',
  )

export const shiftsTwice = (): Sentence =>
  error('E_ONLY_ONE_OF', '"shifts" and "shiftsPerDay" do not go together', 'where shifts differ they are named: leave "shiftsPerDay" out')

export const anchorsOdd = (why: string): Sentence => error('E_ANCHORS', why, 'give one value for the score 1 and another for the score 5')
