/**
 * The pump line: one operator, Ann, for the second and third station. A product takes 55 s + 70 s = 125 s of her; of a shift of 8 h with a
 * break of 30 min 27,000 s are work, so that she serves 216 at most, whatever else is changed. This is arithmetic, no run.
 */
import { expect, test } from 'vitest'
import { commandNamed, COMMANDS } from './commands.ts'
import { judgeLines } from './judge.ts'
import { intervalsOf, objectsOf } from './document.ts'
import { lineNamed } from './lines.ts'
import { paragraphsOf } from './textParts.ts'
import { type Telling, tellingOf } from './telling.ts'

const PUMP = lineNamed('pump-line')
const AT_MOST = 27_000 / 125
/** units a shift more with a second operator, as a trial of other words found it */
const SECOND_OPERATOR = 111

const telling = async (name: string): Promise<Telling> => await tellingOf(PUMP, commandNamed(name))

/** what tells nothing of the limit: a sharing of tasks, a stretch of time, and what is said of the line with a second operator */
const NO_STUDY: readonly string[] = ['balance', 'trace', 'order', 'screen', 'promise', 'acceptance', 'trial', 'followup']

judgeLines([PUMP])

/** What each study says in its prose, its table left out. */
const prose = async (name: string): Promise<string> => paragraphsOf((await telling(name)).text).join('\n')

interface Claim {
  readonly command: string
  readonly says: string
  readonly holds: (told: string) => boolean
}

const says216 = (told: string): boolean => /\bAnn\b[^.]*\bat most 216 units a shift/.test(told)
const isLimit = (told: string): boolean => /What limits the line: Ann\b/.test(told)

/** Every study names her and what she can serve, whatever else it asks; those that diagnose the line name her as its limit. */
const CLAIMS: readonly Claim[] = [
  ...COMMANDS.filter(({ name }) => !NO_STUDY.includes(name)).map(({ name }) => ({
    command: name,
    says: 'Ann serves 216 a shift at most, and the plan of 330 cannot be met on average',
    holds: (told: string) => says216(told) && /plan of 330 cannot be met on average/.test(told),
  })),
  ...['run', 'runs', 'sweep', 'carriers', 'drivers', 'forecast'].map((command) => ({ command, says: 'Ann is the limit', holds: isLimit })),
  {
    command: 'drivers',
    says: 'a second operator helps most: the first of what is said to bring anything',
    holds: (told) => /^[^.]*\bAnn\b[^.]*\. A second operator like Ann brings 1[01]\d ± \d+ units a shift\./.test(told.replace(/\s+/g, ' ')),
  },
  {
    command: 'losses',
    says: 'the costliest cause is waiting for operators',
    holds: (told) => /costliest single cause is waiting for operators/.test(told) && /largest loss is by waiting for operators/.test(told),
  },
]

test.each(CLAIMS)('$command: $says', async ({ command, holds }) => {
  const told = await prose(command)
  expect(holds(told), told).toBe(true)
})

test('drivers: no other change brings as much as a second operator', async () => {
  const { json } = await telling('drivers')
  const { wholeChanges, drivers } = json as {
    wholeChanges: { kind: string; difference: { low: number; high: number } }[]
    drivers: { unitsOfStep: number }[]
  }
  const [first, ...others] = wholeChanges
  expect(first!.kind).toBe('operator')
  expect(first!.difference.low).toBeLessThan(SECOND_OPERATOR)
  expect(first!.difference.high).toBeGreaterThan(SECOND_OPERATOR)
  for (const { difference } of others) expect(difference.high).toBeLessThan(first!.difference.low)
  for (const { unitsOfStep } of drivers) expect(unitsOfStep).toBeLessThan(first!.difference.low)
})

test('the runs themselves: no mean above what Ann can serve, and waiting for her leads at her stations', async () => {
  const { json } = await telling('runs')
  const { count } = json as { count: { mean: { low: number; high: number }; stations: { name: string; shares: Record<string, number> }[] } }
  expect(count.mean.low).toBeLessThan(AT_MOST)
  expect(count.mean.high).toBeGreaterThan(0.95 * AT_MOST)
  for (const { name, shares } of count.stations.filter((station) => ['S2', 'S3'].includes(station.name))) {
    const waits = Object.entries(shares).filter(([state]) => !['working', 'exchanging', 'break'].includes(state))
    expect(waits.sort(([, a], [, b]) => b - a)[0]![0], name).toBe('waiting for operator')
  }
})

test('a second operator brings 111 more a shift, within the interval', async () => {
  const { json, text } = await telling('compare')
  const pair = (json as { pairs: { first: string; difference: { low: number; high: number; mean: number } }[] }).pairs[0]!
  expect(pair.first).toBe('second operator')
  expect(pair.difference.low).toBeLessThan(SECOND_OPERATOR)
  expect(pair.difference.high).toBeGreaterThan(SECOND_OPERATOR)
  expect(text).toMatch(/“second operator” makes 1[01]\d more units a shift than “Pump line”/)
})

test('the best of all counts stays below the plan: what is short is no carrier', async () => {
  const { json } = await telling('sweep')
  const means = intervalsOf(objectsOf(json).filter(({ carriers }) => typeof carriers === 'number'))
  for (const { mean } of means.filter((interval) => interval.mean > 100)) expect(mean).toBeLessThan(1.05 * AT_MOST)
})
