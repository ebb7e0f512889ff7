/**
 * A line or a scenario as a file in its complete form: every field of `LineSpec` said once, in base units, so that it reads back identical.
 * Numbers are written with the digits that JavaScript needs to read the same double again.
 */
import {
  type BreakdownPart,
  completeLine,
  type GivenLine,
  type LineSpec,
  type PathSpec,
  type StationSpec,
  type TaskSpec,
  type ZoneSpec,
} from '@loopwright/line'
import { Document, type Scalar, type YAMLMap } from 'yaml'
import { joinPath } from '../text/located.ts'
import type { Scenario } from '../scenario.ts'
import { distribution } from './distribution.ts'
import { general, isWhole, mergeOf, place, supplyOf } from './general.ts'
import { flag, flow, flowList, list, map, metres, NO_REMARKS, number, type Style, seconds, text, type Value } from './nodes.ts'
import { named, products, ungrouped } from './products.ts'

/**
 * A scenario that holds nothing but this line.
 *
 * @returns  YAML; `readScenario` gives the identical line
 * @example readScenario(writeLine(line)).scenario.line.zones.length // => 8
 */
export function writeLine(given: GivenLine): string {
  const line = completeLine(given)
  const layout = { turns: line.zones.map(() => null) }
  return writeScenario({ name: 'Line', question: 'What does this line make?', line, plan: null, calendar: null, layout, ...untitled(line) })
}

/** A line whose parts people call by their names. */
export function untitled(line: LineSpec): Pick<Scenario, 'titles' | 'stopEntries' | 'variantGroups'> {
  const stopEntries = line.breakdowns.map(({ name }) => ({ name, title: name, sources: [{ source: name, place: '' }] }))
  return { titles: { tasks: {}, variants: {} }, stopEntries, variantGroups: ungrouped(line, {}) }
}

/**
 * The whole scenario in complete form; `readScenario` gives an identical one.
 *
 * @example readScenario(writeScenario(scenario)).scenario.line.zones.length // => 10
 */
export function writeScenario(scenario: Scenario): string {
  return texted(compose(scenario, { remarks: NO_REMARKS, wide: false }), '')
}

/** The same as values instead of text. */
export function writtenValues(scenario: Scenario): Record<string, unknown> {
  return compose(scenario, { remarks: NO_REMARKS, wide: false }).toJSON() as Record<string, unknown>
}

/** The nodes of a complete form as text, under a heading; '': none. */
export function texted(root: YAMLMap, heading: string): string {
  const document = new Document(root)
  if (heading !== '') document.commentBefore = heading
  return document.toString({ lineWidth: 0, version: undefined } as never)
}

/** The nodes of the complete form. */
export function compose(scenario: Scenario, style: Style): YAMLMap {
  const { line } = scenario
  return map('', style, [
    ['format', number(1)],
    ['question', text(scenario.question)],
    ['name', text(scenario.name)],
    [
      'plan',
      scenario.plan === null ? null : text(`${scenario.plan.units} ${/^\d/.test(scenario.plan.per) ? 'in' : 'per'} ${scenario.plan.per}`),
    ],
    ['judged', scenario.calendar === null ? null : judged(scenario.calendar)],
    ['warmup', seconds(line.window.warmupSeconds)],
    ['end', seconds(line.window.endSeconds)],
    [
      'breaks',
      list(
        'breaks',
        style,
        line.breaks.map((one) =>
          flow([
            ['after', seconds(one.startSeconds)],
            ['lasts', seconds(one.lengthSeconds)],
          ]),
        ),
      ),
    ],
    ['conveyorDuringBreaks', flag(line.conveyorDuringBreaks)],
    [
      'drive',
      map('drive', style, [
        ['reaction', seconds(line.reactionSeconds)],
        ['stagger', seconds(line.staggerSeconds)],
      ]),
    ],
    ['carriers', carriers(line, style)],
    [
      'zones',
      map(
        'zones',
        style,
        line.zones.map((zone, i) => [zone.name, zoneOf(line, zone, scenario.layout.turns[i] ?? null, style)]),
      ),
    ],
    [
      'paths',
      list(
        'paths',
        style,
        line.paths.map((path, i) => pathOf(line, path, i, style)),
      ),
    ],
    ['products', products(scenario, style)],
    ['tasks', named(line.tasks, scenario.titles.tasks)],
    [
      'stations',
      map(
        'stations',
        style,
        line.stations.map((station) => [station.name, stationOf(line, station, style)]),
      ),
    ],
    [
      'stops',
      map(
        'stops',
        style,
        line.breakdowns.map((stop) => [stop.name, stopOf(scenario, stop, style)]),
      ),
    ],
    ...general(line, style),
  ])
}

function judged(calendar: NonNullable<Scenario['calendar']>): YAMLMap {
  return flow([
    ['name', text(calendar.judged)],
    ['shifts', number(calendar.shifts)],
    ['gross', seconds(calendar.grossSeconds)],
    ['net', seconds(calendar.netSeconds)],
  ])
}

function carriers(line: LineSpec, style: Style): YAMLMap {
  const { count, lengthMetres, widthMetres, start } = line.carriers
  return map('carriers', style, [
    ['count', number(count)],
    ['length', metres(lengthMetres)],
    ['width', metres(widthMetres)],
    ['start', typeof start === 'string' ? text(start) : flowList(start.map((zone) => place(line, zone)))],
  ])
}

function zoneOf(line: LineSpec, zone: ZoneSpec, turn: 'left' | 'right' | null, style: Style): YAMLMap {
  const path = joinPath('zones', zone.name)
  const transfer = zone.transfer
  return map(
    path,
    style,
    [
      ['length', metres(zone.lengthMetres)],
      ['sensorBeforeStop', metres(zone.sensorBeforeStopMetres)],
      ['release', text(zone.release)],
      ['turn', text(turn ?? 'none')],
      [
        'transfer',
        transfer === null
          ? text('none')
          : map(
              `${path}.transfer`,
              style,
              [
                ['lift', seconds(transfer.liftSeconds)],
                ['lower', seconds(transfer.lowerSeconds)],
                ['enterOnlyIfExitClear', flag(transfer.enterOnlyIfExitClear)],
              ],
              !style.wide,
            ),
      ],
      ['divert', zone.divert === 'first' && !style.wide ? null : text(zone.divert)],
      ['merge', zone.merge.kind === 'waiting' && !style.wide ? null : mergeOf(line, zone.merge)],
    ],
    !style.wide,
  )
}

function pathOf(line: LineSpec, path: PathSpec, index: number, style: Style): YAMLMap {
  const rate = (value: number | null, unit: string): Scalar => text(value === null ? 'none' : `${value} ${unit}`)
  return map(
    `paths[${index}]`,
    style,
    [
      ['from', place(line, path.from)],
      ['to', place(line, path.to)],
      ['distance', metres(path.distanceMetres)],
      ['speed', rate(path.speedMetresPerSecond, 'm/s')],
      ['acceleration', rate(path.accelerationMetresPerSecondSquared, 'm/s²')],
      ['across', flag(path.across)],
      ['fromPosition', text(path.fromPosition)],
      ['toPosition', text(path.toPosition)],
      ['move', path.moveSeconds === null ? text('derived') : distribution(path.moveSeconds)],
      [
        'clear',
        path.clearSeconds === null ? text('derived') : path.clearSeconds === 'move' ? text('move') : distribution(path.clearSeconds),
      ],
      ['takes', takesOf(line, path)],
      [path.manual?.kind ?? 'push', path.manual === null ? null : text(line.stations[path.manual.station]!.name)],
    ],
    !style.wide,
  )
}

/** null: everybody */
function takesOf(line: LineSpec, { takes }: PathSpec): YAMLMap | null {
  const { variants, load, rejected, forStation } = takes
  if (variants === null && load === null && rejected === null && forStation === null) return null
  return flow([
    ['variants', variants === null ? null : flowList(variants.map((variant) => text(line.variants[variant]!)))],
    ['load', load === null ? null : text(load)],
    ['rejected', rejected === null ? null : flag(rejected)],
    ['forStation', forStation === null ? null : text(line.stations[forStation]!.name)],
  ])
}

function stationOf(line: LineSpec, station: StationSpec, style: Style): YAMLMap {
  const path = joinPath('stations', station.name)
  const duty = (key: 'unload' | 'load' | 'work'): [string, Value | null] => {
    const tasks = station[key]
    return [
      key,
      tasks === null
        ? null
        : map(
            `${path}.${key}`,
            style,
            tasks.map((task) => [line.tasks[task.task]!, taskOf(line, task, joinPath(`${path}.${key}`, line.tasks[task.task]!), style)]),
          ),
    ]
  }
  return map(path, style, [
    ['name', text(station.title)],
    ['zone', text(line.zones[station.zone]!.name)],
    duty('unload'),
    duty('load'),
    duty('work'),
    ['release', distribution(station.releaseSeconds)],
    ['automatic', flag(station.operatorsNeeded === 0)],
    ['operatorsNeeded', station.operatorsNeeded < 2 ? null : number(station.operatorsNeeded)],
    ['worksInBreaks', flag(station.worksInBreaks)],
    ['accepts', station.unload === null && station.accepts === 'good' ? null : text(station.accepts)],
    ['supply', station.supply === null ? null : supplyOf(station.supply, `supply/${station.name}`)],
    [
      'receiver',
      station.receiver === null
        ? null
        : flow([
            ['cycle', distribution(station.receiver.cycleSeconds)],
            ['queue', number(station.receiver.queue)],
          ]),
    ],
    [
      'safetyStop',
      station.safetyStop === null
        ? null
        : flow([
            ['chance', number(station.safetyStop.probability)],
            ['reset', distribution(station.safetyStop.resetSeconds)],
          ]),
    ],
  ])
}

function taskOf(line: LineSpec, task: TaskSpec, path: string, style: Style): Value {
  const [first] = task.seconds
  const same = first !== null && first !== undefined && task.seconds.every((one) => JSON.stringify(one) === JSON.stringify(first))
  if (same) return distribution(first)
  const times = task.seconds.map((one, i): [string, Value] => [line.variants[i]!, one === null ? text('none') : distribution(one)])
  return map(path, style, [['byVariant', map(`${path}.byVariant`, style, times)]])
}

function stopOf({ line, stopEntries }: Scenario, stop: LineSpec['breakdowns'][number], style: Style): YAMLMap {
  const entry = stopEntries.find(({ sources }) => sources.some(({ source }) => source === stop.name))
  return map(joinPath('stops', stop.name), style, [
    ['title', entry === undefined || entry.title === entry.name ? null : text(entry.title)],
    ['entry', entry === undefined || entry.name === stop.name ? null : text(entry.name)],
    ['at', partOf(line, stop.part)],
    ['after', distribution(stop.timeToFailureSeconds)],
    ['lasts', distribution(stop.repairSeconds)],
    ['clock', text(stop.clock)],
  ])
}

function partOf(line: LineSpec, part: BreakdownPart): Value {
  if (part.kind === 'section')
    return isWhole(line) ? flow([['line', text('whole')]]) : flow([['section', text(line.sections[part.index]!.name)]])
  const name = part.kind === 'station' ? line.stations[part.index]!.name : line.zones[part.index]!.name
  return flow([[part.kind, text(name)]])
}
