import { certainVerdict, chanceVerdict } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { planPhrase, planSentence, planTone } from './planWords.ts'

const plain = (text: string): string => text.replaceAll('\u202f', ' ')
const say = (successes: number, n: number, many = 'shifts'): string => plain(planPhrase(chanceVerdict(successes, n), many))

test('each verdict in words', () => {
  expect(plain(planSentence(320, chanceVerdict(890, 1000), { many: 'shifts' }))).toBe(
    'The plan of 320 is met in about nine of ten shifts (89 %, 87 to 91).',
  )
  expect(say(92, 100)).toBe(
    'met in 92 of 100 shifts simulated; the chance is between 85 % and 96 %, and whether it is nine of ten takes more shifts to say',
  )
  expect(say(100, 100)).toBe('met in all 100 shifts simulated (the chance is at least 96 %)')
  expect(say(198, 200)).toBe('met in more than nine of ten shifts (99 %, 96 to > 99)')
  expect(say(30, 30)).toBe(
    'met in all 30 shifts simulated; the chance is at least 88 %, and whether it is nine of ten takes more shifts to say',
  )
  expect(say(0, 100, 'windows')).toBe('met in none of 100 windows simulated (the chance is at most 4 %)')
  expect(say(5, 5, 'windows')).toBe('met in all 5 windows simulated: too few to promise anything')
  // were the chance nine of ten, three misses of three would come once in a thousand times
  expect(say(0, 3)).toBe('met in none of 3 shifts simulated')
  // Clopper–Pearson for 60 of 100, 95 %: 0.497 to 0.697
  expect(say(60, 100, 'windows')).toBe('met in fewer than nine of ten windows (60 %, 50 to 70)')
})

test('a line without chance meets its plan or does not', () => {
  expect([certainVerdict(true), certainVerdict(false)].map((verdict) => planPhrase(verdict, 'windows'))).toEqual([
    'always met: all windows are the same',
    'never met: all windows are the same',
  ])
})

test('the tone is that of what is shown', () => {
  expect([chanceVerdict(198, 200), chanceVerdict(60, 100), chanceVerdict(92, 100), null].map(planTone)).toEqual([
    'good',
    'bad',
    undefined,
    undefined,
  ])
})
