/** The commands whose telling is judged, one row each; a new command is one more row. */
import { readFileSync } from 'node:fs'
import { decisionFiles } from './decisions.ts'
import type { ToldLine } from './lines.ts'

export interface ToldCommand {
  readonly name: string
  /** What is typed behind the file. */
  readonly words: (line: ToldLine) => readonly string[]
  /** files beside that of the line; the first is typed in its place */
  readonly files?: (line: ToldLine) => Readonly<Record<string, string>>
  /** the first word, where it is another than the name */
  readonly command?: string
  /** it prints `--json` and `--out page.html` too */
  readonly hasMore: boolean
  /** the lines on which it makes sense; all where there is no word of it */
  readonly only?: readonly string[]
  /** the lines on which it makes no sense, each with its reason */
  readonly not?: Readonly<Record<string, string>>
  /** its answer is owed to the plan, where the line has one */
  readonly answersPlan: boolean
}

/** Small numbers: what is told must be right with few runs too. */
const few = (replications: number): string[] => ['--replications', String(replications)]

/** The count that the line has, and one fewer. */
function around({ scenario }: ToldLine): string[] {
  const { count } = scenario.line.carriers
  return ['--carriers', `${Math.max(1, count - 1)}..${count}`]
}

/** Here a share of 20 runs is told, of which 10 are too few to promise anything. */
const TWENTY = ['outdoor-unit-base-line', 'repair-spur', 'some-runs-stand']

const firstVariation = ({ written }: ToldLine): string => Object.keys(written.variations ?? {})[0] ?? ''

/** Which station may move, and where to. */
const MOVES: Readonly<Record<string, readonly [station: string, zones: string]>> = {
  'outdoor-unit-base-line': ['S5', 'Z14..Z16'],
  'ten-zone-learning-loop': ['Fit', 'Z03..Z05'],
  'receiver-limits': ['W', 'Z03..Z06'],
}

/** What a grid moves beside the carriers. */
const FACTORS: Readonly<Record<string, string>> = {
  'outdoor-unit-base-line': 'drive.speed=10,12 m/min',
  'arrivals-limit': 'drive.speed=10,12 m/min',
  'no-chance': 'stations.P.work.press=35,40 s',
  'pump-line': 'stations.S3.work.fitSeal=60 s ± 20 %|70 s ± 20 %',
  'some-runs-stand': 'drive.speed=12,15 m/min',
}

/**
 * Studies of many runs are told on some lines only, so that the whole takes less than a minute: each line here is the only one of its kind
 * or ends in a way of its own, and the lines left out differ from one of these in nothing that the study tells.
 */
const SOME = {
  /** a plan about the border; lists that end; constant times; a plan above a limit; gridlock, and that of every run */
  carriers: ['outdoor-unit-base-line', 'list-ends', 'no-chance', 'one-place', 'pump-line', 'some-runs-stand', 'stands-at-once'],
  /** each with another limit */
  drivers: [
    'outdoor-unit-base-line',
    'ten-zone-learning-loop',
    'test-and-repair-line',
    'arrivals-limit',
    'down-more-than-up',
    'hand-line',
    'list-ends',
    'no-chance',
    'pump-line',
    'receiver-limits',
    'repair-spur',
    'too-few-carriers',
    'too-many-carriers',
    'unreached-station',
    'very-slow',
  ],
  /** each with another cause that takes most */
  losses: [
    'outdoor-unit-base-line',
    'ten-zone-learning-loop',
    'arrivals-limit',
    'down-more-than-up',
    'list-ends',
    'no-chance',
    'pump-line',
    'receiver-limits',
    'stands-at-once',
    'too-few-carriers',
  ],
  /** a list that ends; constant times; a calendar; gridlock; hours between two units */
  steady: ['list-ends', 'no-chance', 'pump-line', 'stands-at-once', 'very-slow'],
  /** alternatives of several kinds; an operator who limits; arrivals */
  money: ['outdoor-unit-base-line', 'pump-line', 'arrivals-limit'],
  /** each with another limit; a line that makes nothing in its shift, which is refused */
  promise: ['outdoor-unit-base-line', 'pump-line', 'arrivals-limit', 'receiver-limits', 'list-ends'],
  /** each with another limit: a station, an operator, arrivals, a receiver, a list that ends, a stop */
  meeting: ['outdoor-unit-base-line', 'pump-line', 'arrivals-limit', 'receiver-limits', 'list-ends', 'down-more-than-up'],
  screening: ['outdoor-unit-base-line', 'hand-line'],
}

/** What was counted after the start: a tenth less than the plan, or than one unit in two minutes; of the demo line stations and stops, too. */
function counted(line: ToldLine): Record<string, string> {
  const { plan, calendar } = line.scenario
  const perShift = Math.round(0.9 * (plan === null ? 120 : calendar === null ? 4 * plan.units : plan.unitsPerWindow))
  const weeks = [10, 10, 8].map((shifts, week) => `W${week + 1},${shifts * perShift + week},${shifts}`)
  return {
    ...decisionFiles(line),
    'counted/weeks.csv': `week,units,shifts\n${weeks.join('\n')}\n`,
    'counted/stations.csv': 'station,seconds,n,sd,blocked,starved\nS6,66.2,40,2.6,3 %,\nS4,58.1,12,9,14 %,6 %\nS2,60.4,30,3.1,,\n',
    'counted/stops.csv': 'stop,count,minutes,shifts\nTester fault,170,1190,28\nPipe tool,31,118,28\n',
  }
}

/** Counts of the first two looks of a trial: few. */
const LOOKS: Readonly<Record<string, string>> = { 'outdoor-unit-base-line': '15,32', 'pump-line': '12,25' }

export const COMMANDS: readonly ToldCommand[] = [
  { name: 'check', words: () => [], hasMore: false, answersPlan: false },
  { name: 'run', words: () => [], hasMore: true, answersPlan: true },
  { name: 'runs', command: 'run', words: (line) => few(TWENTY.includes(line.name) ? 20 : 10), hasMore: true, answersPlan: true },
  { name: 'sweep', words: (line) => [...around(line), ...few(4)], hasMore: true, answersPlan: true },
  {
    name: 'carriers',
    words: (line) => [...around(line), '--at-most', '12'],
    hasMore: true,
    only: SOME.carriers,
    answersPlan: true,
  },
  {
    name: 'compare',
    words: (line) => ['--variations', firstVariation(line), ...few(3)],
    hasMore: true,
    not: { 'test-and-repair-line': 'has no variation' },
    answersPlan: false,
  },
  { name: 'drivers', words: () => few(3), hasMore: true, only: SOME.drivers, answersPlan: false },
  { name: 'losses', words: () => few(3), hasMore: true, only: SOME.losses, answersPlan: false },
  {
    name: 'order',
    words: ({ name }) => ['--move', MOVES[name]![0], '--zones', MOVES[name]![1], '--check-replications', '4', '--least-gain', '5'],
    hasMore: true,
    only: Object.keys(MOVES),
    answersPlan: false,
  },
  { name: 'steady', words: () => ['--runs', '3'], hasMore: true, only: SOME.steady, answersPlan: false },
  {
    name: 'forecast',
    words: (line) => few(TWENTY.includes(line.name) ? 20 : 10),
    hasMore: true,
    answersPlan: true,
  },
  {
    name: 'grid',
    words: (line) => [...around(line), '--set', FACTORS[line.name]!, ...few(3)],
    hasMore: true,
    only: Object.keys(FACTORS),
    answersPlan: true,
  },
  {
    name: 'balance',
    words: ({ scenario }) => ['--stations', String(Math.max(1, scenario.line.stations.length - 1))],
    hasMore: true,
    answersPlan: false,
  },
  {
    name: 'payback',
    words: () => few(9),
    files: decisionFiles,
    hasMore: true,
    only: SOME.money,
    answersPlan: false,
  },
  { name: 'criteria', words: () => few(9), files: decisionFiles, hasMore: true, only: SOME.meeting, answersPlan: false },
  { name: 'screen', words: () => few(2), files: decisionFiles, hasMore: true, only: SOME.screening, answersPlan: false },
  { name: 'promise', words: () => few(20), files: decisionFiles, hasMore: true, only: SOME.promise, answersPlan: false },
  { name: 'acceptance', words: () => few(40), files: decisionFiles, hasMore: true, only: SOME.meeting, answersPlan: false },
  {
    name: 'trial',
    words: ({ name }) => [...few(40), '--counts', LOOKS[name] ?? '1,2'],
    files: decisionFiles,
    hasMore: true,
    only: SOME.meeting,
    answersPlan: false,
  },
  {
    name: 'followup',
    words: ({ name }) => [
      ...few(12),
      ...['--weeks', 'counted/weeks.csv'],
      ...(name === 'outdoor-unit-base-line'
        ? ['--stations', 'counted/stations.csv', '--stops', 'counted/stops.csv', '--write', 'out/now.yaml']
        : []),
    ],
    files: counted,
    hasMore: true,
    only: SOME.meeting,
    answersPlan: false,
  },
  {
    name: 'trace',
    words: (line) => ['--from', `${startMinutes(line)} min`, '--to', `${startMinutes(line) + 1} min`],
    hasMore: false,
    answersPlan: false,
  },
]

/** Of measured data: told of the pilot line alone, whose tables lie beside it. */
export const DATA_COMMANDS: readonly ToldCommand[] = [
  { name: 'times', words: () => [], files: () => dataFiles('times.csv'), hasMore: true, answersPlan: false },
  {
    name: 'stoplog',
    words: () => ['--hours', '06:00-14:00, 14:00-22:00'],
    files: () => dataFiles('stops.csv'),
    hasMore: true,
    answersPlan: false,
  },
  { name: 'mix', words: () => [], files: () => dataFiles('orders.csv'), hasMore: true, answersPlan: false },
  {
    name: 'assemble',
    words: () => ['--data', 'notebooks/data', '--write', 'out/whole.yaml', ...few(4)],
    files: () => dataFiles('skeleton.yaml'),
    hasMore: true,
    answersPlan: false,
  },
  {
    name: 'forecast with data',
    command: 'forecast',
    words: () => ['--data', 'notebooks/data', '--draws', '24', ...few(12)],
    files: () => dataFiles('complete.yaml'),
    hasMore: true,
    answersPlan: true,
  },
]

/** The files of the pilot line, the one first that is typed. */
function dataFiles(first: string): Record<string, string> {
  const names = [first, ...DATA.filter((name) => name !== first)]
  return Object.fromEntries(names.map((name) => [`notebooks/data/${name}`, readFileSync(`notebooks/data/${name}`, 'utf8')]))
}
const DATA = ['times.csv', 'stops.csv', 'orders.csv', 'skeleton.yaml', 'complete.yaml']

/** The first minute that counts. */
const startMinutes = ({ scenario }: ToldLine): number => Math.ceil(scenario.line.window.warmupSeconds / 60)

/** Whether the command is told on the line. */
export const goesWith = (command: ToldCommand, line: ToldLine): boolean =>
  (command.only?.includes(line.name) ?? true) && command.not?.[line.name] === undefined

export const commandNamed = (name: string): ToldCommand => COMMANDS.find((one) => one.name === name)!
