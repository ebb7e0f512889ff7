/** The one truth of each line, as its first comment says it, against the runs' own numbers; and what the lines have, taken together. */
import { expect, test } from 'vitest'
import { commandNamed } from './commands.ts'
import { LINES, lineNamed } from './lines.ts'
import { tellingOf } from './telling.ts'

interface Count {
  readonly units: readonly number[]
  readonly gridlocks: number
  readonly outOfProducts: number
  readonly replications: number
  readonly stations: readonly { readonly name: string; readonly shares: Readonly<Record<string, number>> }[]
}

interface Truth {
  readonly line: string
  /** units of the window that arithmetic allows on average, from and to */
  readonly units: readonly [from: number, to: number]
  /** the share of its time that a station spends so, from and to */
  readonly share?: readonly [station: string, state: string, from: number, to: number]
  readonly gridlocks?: readonly [from: number, to: number]
}

/** Above an arithmetic limit there is room for what the window's ends cut and for chance: 5 % of these few runs. */
const TRUTHS: readonly Truth[] = [
  { line: 'pump-line', units: [200, 216 * 1.05], share: ['S2', 'waiting for operator', 0.35, 0.55] },
  { line: 'arrivals-limit', units: [120, 160 * 1.1], share: ['inlet', 'waiting for product', 0.5, 0.8] },
  { line: 'receiver-limits', units: [143, 145], share: ['U', 'waiting for receiver', 0.65, 0.85] },
  { line: 'list-ends', units: [24, 24], share: ['L', 'waiting for product', 0.75, 0.95] },
  { line: 'no-chance', units: [142, 142], share: ['P', 'working', 40 / 50.6 - 0.01, 40 / 50.6 + 0.01] },
  { line: 'some-runs-stand', units: [20, 2 * 84 * 1.05], gridlocks: [1, 9] },
  { line: 'repair-spur', units: [155, 3 * 55.4 * 1.05], share: ['M', 'working', 0.05, 0.25] },
  { line: 'unreached-station', units: [185, 2 * 96.5 * 1.05], share: ['C', 'working', 0, 0] },
  { line: 'down-more-than-up', units: [50, 6 * 12 * 1.1], share: ['W', 'stopped', 0.7, 0.85] },
  { line: 'hand-line', units: [155, 2 * 80 * 1.05], share: ['W', 'handling', 15 / 45 - 0.03, 15 / 45 + 0.03] },
  { line: 'side-by-side', units: [2 * 45, 2 * 90], share: ['left', 'working', 0.85, 1] },
  { line: 'late-shift', units: [80, 117.5], share: ['L', 'waiting for operator', 0.3, 0.6] },
  { line: 'too-few-carriers', units: [150, 2 * 79.6 * 1.05], share: ['F', 'starved', 0.3, 0.5] },
  { line: 'very-slow', units: [24, 28], share: ['O', 'working', 0.95, 1] },
  { line: 'stands-at-once', units: [0, 0], share: ['L', 'blocked', 1, 1], gridlocks: [10, 10] },
  { line: 'one-place', units: [10, 10], share: ['P', 'waiting for product', 0.75, 0.9] },
  { line: 'too-many-carriers', units: [140, 2 * 73.2 * 1.05], share: ['L', 'blocked', 0.4, 0.6] },
]

test('every line of lines/ has its truth here and in its first comment', () => {
  const own = LINES.filter(({ file }) => file.includes('lines/'))
  expect(own.map(({ name }) => name).sort()).toEqual(TRUTHS.map(({ line }) => line).sort())
  for (const { name, text } of own) expect(text, name).toMatch(/^# Truth: /)
})

test.each(TRUTHS)('$line', async ({ line, units, share, gridlocks }) => {
  const told = await tellingOf(lineNamed(line), commandNamed('runs'))
  const { count } = told.json as { count: Count }
  const mean = count.units.reduce((sum, made) => sum + made, 0) / count.units.length
  expect(mean).toBeGreaterThanOrEqual(units[0])
  expect(mean).toBeLessThanOrEqual(units[1])
  expect(count.gridlocks).toBeGreaterThanOrEqual(gridlocks?.[0] ?? 0)
  expect(count.gridlocks).toBeLessThanOrEqual(gridlocks?.[1] ?? 0)
  if (share === undefined) return
  const [name, state, from, to] = share
  const part = count.stations.find((station) => station.name === name)!.shares[state]!
  expect(part).toBeGreaterThanOrEqual(from)
  expect(part).toBeLessThanOrEqual(to)
})

test('some of the runs of some-runs-stand stand, and in no run of no-chance does anything differ', async () => {
  const runs = commandNamed('runs')
  const units = async (line: string): Promise<readonly number[]> =>
    ((await tellingOf(lineNamed(line), runs)).json as { count: Count }).count.units
  expect(Math.max(...(await units('some-runs-stand')))).toBeGreaterThan(1.5 * Math.min(...(await units('some-runs-stand'))))
  expect(new Set(await units('no-chance')).size).toBe(1)
})

/** What a file can say, each found in the written text of some line. */
const FEATURES: Readonly<Record<string, RegExp>> = {
  'shift back to back': /shift: \{/,
  'shifts by name': /shifts:/,
  breaks: /breaks:/,
  'conveyor stops in breaks': /conveyorDuringBreaks: false/,
  ramps: /acceleration:/,
  'train release': /release: train/,
  'packed start': /start: packed/,
  'open line': /store >/,
  transfers: /corners:/,
  'exit-clear transfers': /enterOnlyIfExitClear: true/,
  divert: /divert: free/,
  merge: /merge:/,
  'way for rejected': /rejected: true/,
  push: /push:/,
  pull: /pull:/,
  variants: /variants:/,
  options: /options:/,
  levelled: /mix: levelled/,
  'pattern of products': /kind: pattern/,
  'list of products': /kind: list/,
  automatic: /automatic: true/,
  'works in breaks': /worksInBreaks: true/,
  'two operators': /operatorsNeeded: 2/,
  'shared operators': /operators:/,
  walks: /walks:/,
  accepts: /accepts:/,
  receiver: /receiver:/,
  'safety stop': /safetyStop:/,
  arrivals: /supply: \{ every/,
  inspection: /inspections:/,
  'rework only': /mend: only/,
  'rework again': /: again/,
  'repair crew': /repairCrews: 1/,
  sections: /sections:/,
  'stop by the clock': /clock: calendar/,
  'stop by chance': /chance: \d+ per 100 cycles/,
  'stop of a section': /section: back/,
  'stop of transfers': /every transfer/,
  'stop of the line': /at: line/,
  lognormal: /lognormal|± \d/,
  uniform: /\d\.\.\d+ s/,
  triangular: /\d\.\.\d+\.\.\d+ s/,
  pert: /pert /,
  gamma: /gamma /,
  exponential: /exponential /,
  weibull: /kind: weibull/,
  empirical: /kind: empirical/,
  discrete: /kind: discrete/,
  replay: /kind: replay/,
  occasional: /kind: occasional/,
  limited: /kind: limited/,
}

test.each(Object.entries(FEATURES))('some line has: %s', (_, pattern) => {
  expect(LINES.filter(({ text }) => pattern.test(text)).map(({ name }) => name)).not.toEqual([])
})
