/** From what was asked of a grid to its lines: levels put into the scenario file by path, all wrong ones told at once. */
import { type Changes, type ChangeValue, type Problem, readScenarioWith, type Scenario } from '@loopwright/scenario'
import { type Factor, factorial, GRID_POINTS_MAX, type GridLine } from '@loopwright/study/compare'
import { withCarriers } from '@loopwright/study/change'

/** Levels of the factors. */
export interface GridLevels {
  /** numbers of carriers */
  readonly carriers?: readonly number[]
  /** values by path, as under `variations`: `{ 'drive.speed': ['10 m/min', '15 m/min'] }` */
  readonly set?: Readonly<Record<string, readonly ChangeValue[]>>
}

/** The scenario that the levels are put into. */
export interface GridSource {
  /** as it stands */
  readonly scenario: Scenario
  readonly text: string
  /** text of a data file that the scenario names */
  readonly files: (path: string) => string | null
  /** stands before a level where a finding shows it, such as `--set ` */
  readonly changePrefix?: string
}

/** The lines of a grid, ready to run, or why there are none. */
export interface GridLines {
  readonly factors: readonly Factor[]
  /** every setting, the levels of the last factor fastest; empty where a level is wrong */
  readonly points: readonly GridLine[]
  /** errors and warnings that the file as it stands does not have, each once */
  readonly problems: readonly Problem[]
}

const CARRIERS = 'carriers'
const COUNT_PATH = 'carriers.count'

/**
 * The lines of a grid. The carriers come first, then the paths in the order given.
 *
 * @throws RangeError  if nothing is varied, a level stands twice, the settings are too many, or the line takes no such number of carriers
 * @example gridLines({ scenario, text, files: () => null }, { carriers: [3, 4], set: {} }).points.length // => 2
 */
export function gridLines(source: GridSource, asked: GridLevels): GridLines {
  const { counts, set } = levelsOf(asked)
  const factors: Factor[] = [
    ...(counts === null ? [] : [{ name: CARRIERS, levels: counts.map(String) }]),
    ...set.map(([path, levels]) => ({ name: path, levels: levels.map(levelText) })),
  ]
  refuse(factors)
  const found = new Map<string, Problem>()
  const read = (changes: Changes): Scenario | null => {
    const { text, files, changePrefix = '' } = source
    const { scenario, problems } = readScenarioWith(text, changes, { files, changePrefix })
    for (const problem of problems) if ('change' in problem || problem.message.includes(' (with ')) found.set(problemKey(problem), problem)
    return scenario
  }
  // each level by itself first, so that every wrong one is told, and once
  let wrong = false
  for (const [path, levels] of set) for (const level of levels) wrong = read({ [path]: level }) === null || wrong
  const points: GridLine[] = []
  if (!wrong) {
    const settings = factorial(set.map(([name, levels]) => ({ name, levels: levels.map(levelText) })))
    const scenarios = settings.map((setting) => read(Object.fromEntries(set.map(([path, levels], at) => [path, levels[setting[at]!]!]))))
    if (scenarios.every((scenario) => scenario !== null)) {
      for (const count of counts ?? [null]) {
        for (const { line, plan } of scenarios as readonly Scenario[]) {
          points.push({ line: count === null ? line : withCarriers(line, count), plan: plan?.unitsPerWindow ?? null })
        }
      }
    }
  }
  return { factors, points, problems: [...found.values()] }
}

/** `carriers.count` is a number of carriers however it is asked for. */
function levelsOf({ carriers, set = {} }: GridLevels): { counts: readonly number[] | null; set: [string, readonly ChangeValue[]][] } {
  const entries = Object.entries(set)
  const byPath = entries.find(([path]) => path === COUNT_PATH)?.[1].map(Number)
  if (byPath === undefined || byPath.some((count) => !Number.isInteger(count))) return { counts: carriers ?? null, set: entries }
  if (carriers !== undefined)
    throw new RangeError('the number of carriers is given twice: by its own name and as carriers.count; give it once')
  return { counts: byPath, set: entries.filter(([path]) => path !== COUNT_PATH) }
}

function refuse(factors: readonly Factor[]): void {
  if (factors.length === 0) throw new RangeError('a grid varies something: give numbers of carriers, or levels of a value by its path')
  for (const { name, levels } of factors) {
    if (levels.length === 0) throw new RangeError(`${name} has no level: give two or more`)
    const twice = levels.find((level, index) => levels.indexOf(level) !== index)
    if (twice !== undefined) throw new RangeError(`${name} has the level ${twice} twice; give each once`)
  }
  const count = factors.reduce((product, { levels }) => product * levels.length, 1)
  if (count > GRID_POINTS_MAX) {
    const shape = factors.map(({ levels }) => levels.length).join(' × ')
    throw new RangeError(`a grid of ${shape} = ${count} settings is too large: at most ${GRID_POINTS_MAX}; leave out levels or a factor`)
  }
}

const levelText = (level: ChangeValue): string => (typeof level === 'object' ? JSON.stringify(level) : String(level).trim())

/** The same finding of two settings is one. */
const problemKey = ({ code, message, change }: Problem): string => JSON.stringify([code, message.replace(/ \(with .*\)$/u, ''), change])
