/** What of a scenario its page offers to change, where nobody has said. */
import { DUTIES, type SupplySpec } from '@loopwright/line'
import { distributionMean } from '@loopwright/stats'
import {
  type ChangeValue,
  type FileRead,
  type FileValues,
  readScenario,
  type Scenario,
  type ScenarioNotes,
  timesScaled,
  titleOf,
} from '@loopwright/scenario'
import { shortNumber } from '../inputs/quantityWords.ts'
import type { LiveInput } from './liveInput.ts'

/** more of one kind would be a form that nobody reads */
const MAX = 40

/**
 * All usual inputs of a scenario: carriers, speed, release, plan, how often products come; of each station its time, its zone, and how often products come to it
 * and go from it; how rare and how long stops are; shares; operators. What the file does not say, or says in a table, is left out, but for the release.
 *
 * @param files  text of a data file that the scenario names
 * @returns      empty where the file has errors
 * @example liveInputs(text)[0].key // => 'carriers'
 */
export function liveInputs(text: string, files: (path: string) => string | null = () => null): LiveInput[] {
  const read = readScenario(text, { files })
  return read.scenario === null ? [] : inputsOf(read)
}

/** A file that is read already. */
export type InputSource = Pick<FileRead, 'scenario' | 'notes' | 'values'>

/** The same of it. */
export function inputsOf({ scenario, notes, values: at }: InputSource): LiveInput[] {
  return [
    ...lineInputs(scenario, notes, at),
    ...notes.stations.slice(0, MAX).flatMap((_, index) => stationInputs(scenario, notes, index, at)),
    ...scenario.stopEntries.slice(0, MAX).flatMap((entry) => stopInputs(scenario, entry, at)),
    ...shareInputs(scenario, at),
    ...operatorInputs(at),
  ]
}

function lineInputs(scenario: Scenario, notes: ScenarioNotes, at: FileValues): LiveInput[] {
  const [count, speed, plan] = [at('carriers.count'), at('drive.speed'), at('plan')]
  // the default, where there is a drive that could say otherwise
  const release = at('drive.release') ?? (typeof speed === 'string' ? 'single' : null)
  return [
    ...(typeof count === 'number'
      ? [
          range(
            'carriers',
            'Line',
            'Carriers',
            String(count),
            [1, Math.max(count, Math.min(notes.zoneNames.length - 1, notes.storageZones)), 1, ''],
            'carriers.count',
          ),
        ]
      : []),
    ...quantity('speed', 'Speed', speed, 'drive.speed', 0.25, 2),
    ...(release === 'single' || release === 'train'
      ? [choice('release', 'Line', 'Release', release, ['single', 'train'], { kind: 'path', path: 'drive.release' })]
      : []),
    ...quantity('plan', 'Plan', plan, 'plan', 0.5, 1.5, scenario.plan?.units),
    ...supplyInput('supply', 'Line', 'A product comes every', scenario.line.supply, 'supply', at),
  ]
}

/** How often products come, where that is a time and no list. */
function supplyInput(
  key: string,
  group: LiveInput['group'],
  label: string,
  supply: SupplySpec | null,
  base: string,
  at: FileValues,
): LiveInput[] {
  const path = `${base}.every`
  return supply?.arrivals.kind === 'every' && scales(at(path))
    ? [meanInput(key, group, label, distributionMean(supply.arrivals.seconds), [path], [0.5, 2])]
    : []
}

function stationInputs({ line }: Scenario, notes: ScenarioNotes, index: number, at: FileValues): LiveInput[] {
  const { name, title, zone, meanWorkSeconds } = notes.stations[index]!
  const { supply = null, receiver = null } = line.stations.find((station) => station.name === name) ?? {}
  const label = title === name ? name : `${name} ${title}`
  const base = `stations.${step(name)}`
  const written = DUTIES.map((duty) => `${base}.${duty}`).filter((path) => at(path) !== null)
  const adds = addedPaths(notes, name, at)
  // one duty with its times in a table: then the mean would be told wrong
  const scaled = written.length > 0 && written.every((path) => scales(at(path))) && adds !== null && meanWorkSeconds > 0
  return [
    ...(scaled ? [meanInput(`${name}.time`, 'Stations', label, meanWorkSeconds, [...written, ...adds], [0.5, 1.5])] : []),
    ...(at(`${base}.zone`) === zone
      ? [choice(`${name}.zone`, 'Stations', `Zone of ${name}`, zone, notes.zoneNames, { kind: 'path', path: `${base}.zone` })]
      : []),
    ...supplyInput(`${name}.supply`, 'Stations', `A product comes to ${name} every`, supply, `${base}.supply`, at),
    ...(receiver !== null && scales(at(`${base}.receiver.cycle`))
      ? [
          meanInput(
            `${name}.receiver`,
            'Stations',
            `Receiver of ${name}, a product every`,
            distributionMean(receiver.cycleSeconds),
            [`${base}.receiver.cycle`],
            [0.5, 2],
          ),
        ]
      : []),
  ]
}

/** Where options add time to the tasks of a station; null where they add it at another one too. */
function addedPaths(notes: ScenarioNotes, station: string, at: FileValues): string[] | null {
  const tasksOf = (name: string): string[] => DUTIES.flatMap((duty) => keysOf(at(`stations.${step(name)}.${duty}`)))
  const own = tasksOf(station)
  const elsewhere = new Set(notes.stations.filter(({ name }) => name !== station).flatMap(({ name }) => tasksOf(name)))
  const added = notes.options.flatMap((option) => {
    const base = `products.options.${step(option)}.adds`
    return keysOf(at(base)).flatMap((task) => (own.includes(task) ? [{ task, path: `${base}.${step(task)}` }] : []))
  })
  return added.some(({ task }) => elsewhere.has(task)) ? null : added.map(({ path }) => path)
}

const keysOf = (value: ChangeValue | null): string[] =>
  value === null || typeof value !== 'object' || Array.isArray(value) ? [] : Object.keys(value)

function stopInputs(scenario: Scenario, { name, title, sources }: Scenario['stopEntries'][number], at: FileValues): LiveInput[] {
  const source = scenario.line.breakdowns.find((each) => each.name === sources[0]?.source)
  if (source === undefined) return []
  const base = `stops.${step(name)}`
  const chance = at(`${base}.chance`)
  const mean = (key: string, label: string, seconds: number, path: string, span: readonly [number, number]): LiveInput[] =>
    scales(at(path)) && seconds > 0 ? [meanInput(key, 'Stops', label, seconds, [path], span)] : []
  const after = distributionMean(source.timeToFailureSeconds)
  return [
    ...(typeof chance === 'string'
      ? quantity(`${name}.rare`, `${title}: how often`, chance, `${base}.chance`, 0, 4).map((each) => ({
          ...each,
          group: 'Stops' as const,
        }))
      : mean(`${name}.rare`, `${title}: on average after`, after, `${base}.after`, [0.25, 4])),
    ...mean(`${name}.long`, `${title}: lasts on average`, distributionMean(source.repairSeconds), `${base}.lasts`, [0.1, 3]),
  ]
}

/** Percentages by variant, which add up to 100. */
function shareInputs(scenario: Scenario, at: FileValues): LiveInput[] {
  const shares = at('products.variants')
  if (shares === null || typeof shares !== 'object' || Array.isArray(shares)) return []
  const entries = Object.entries(shares)
  if (entries.length < 2 || !entries.every(([, share]) => typeof share === 'string' && percentOf(share) !== null)) return []
  return entries.slice(0, MAX).map(
    ([variant, share]): LiveInput => ({
      key: `share.${variant}`,
      group: 'Products',
      label: `Share of ${titleOf(scenario, 'variant', variant)}`,
      file: `${percentOf(share as string)} %`,
      shown: { kind: 'range', from: 0, to: 100, step: 1, unit: '%' },
      does: { kind: 'share', variant },
    }),
  )
}

function operatorInputs(at: FileValues): LiveInput[] {
  const named = at('operators')
  if (named === null || typeof named !== 'object') return []
  return Object.keys(named)
    .slice(0, MAX)
    .map((operator) => ({
      key: `operator.${operator}`,
      group: 'Operators',
      label: `People like ${operator}`,
      file: '1',
      shown: { kind: 'range', from: 0, to: 4, step: 1, unit: '' },
      does: { kind: 'people', operator },
    }))
}

/** A number of the file with what stands behind it, such as `15 m/min` or `320 per shift`. */
function quantity(
  key: string,
  label: string,
  value: ChangeValue | null,
  path: string,
  least: number,
  most: number,
  units?: number,
): LiveInput[] {
  const match = typeof value === 'string' ? /^\s*(\d+(?:\.\d+)?)\s*(\D.*?)\s*$/.exec(value) : null
  if (match === null) return []
  const number = Number(match[1])
  if (!(number > 0) || (units !== undefined && units !== number)) return []
  const by = stepFor(number)
  return [range(key, 'Line', label, `${match[1]} ${match[2]}`, [tidy(number * least, by), tidy(number * most, by), by, match[2]!], path)]
}

/** from so many seconds on a time is told in this unit */
const UNITS = [
  ['h', 3600, 36_000],
  ['min', 60, 120],
  ['s', 1, 0],
] as const

function meanInput(
  key: string,
  group: LiveInput['group'],
  label: string,
  meanSeconds: number,
  paths: readonly string[],
  [least, most]: readonly [number, number],
): LiveInput {
  const [unit, length] = UNITS.find(([, , from]) => meanSeconds >= from)!
  const mean = meanSeconds / length
  const by = stepFor(mean)
  return {
    key,
    group,
    label,
    // without thin spaces, as a file takes it
    file: `${shortNumber(mean).replace(/\s/g, '')} ${unit}`,
    shown: { kind: 'range', from: Math.max(by, tidy(mean * least, by)), to: tidy(mean * most, by), step: by, unit },
    does: { kind: 'times', paths, meanSeconds },
  }
}

function range(
  key: string,
  group: LiveInput['group'],
  label: string,
  file: string,
  [from, to, by, unit]: readonly [number, number, number, string],
  path: string,
): LiveInput {
  return { key, group, label, file, shown: { kind: 'range', from, to, step: by, unit }, does: { kind: 'path', path } }
}

function choice(
  key: string,
  group: LiveInput['group'],
  label: string,
  file: string,
  values: readonly string[],
  does: LiveInput['does'],
): LiveInput {
  return { key, group, label, file, shown: { kind: 'choice', options: values.map((value) => ({ value, label: value })) }, does }
}

const scales = (value: ChangeValue | null): boolean => value !== null && timesScaled(value, 2) !== null

/** some hundred steps from nought to the value, in ones, twos or fives */
function stepFor(value: number): number {
  const rough = value / 100
  const decade = 10 ** Math.floor(Math.log10(rough))
  const lead = rough / decade
  return Number(((lead > 5 ? 10 : lead > 2 ? 5 : lead > 1 ? 2 : 1) * decade).toPrecision(1))
}

const tidy = (value: number, by: number): number => Number((Math.round(value / by) * by).toPrecision(12))

function percentOf(text: string): number | null {
  const match = /^\s*(\d+(?:\.\d+)?)\s*%\s*$/.exec(text)
  return match === null ? null : Number(match[1])
}

/** A name as a step of a path, quoted where it would be misread. */
function step(name: string): string {
  return /[."[\]]/.test(name) || name === '' ? `"${name.replaceAll('"', '')}"` : name
}
