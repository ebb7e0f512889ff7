/** What only some lines have, in the complete form: sections, operators, supplies, inspections, crews. */
import { type LineSpec, type MergeSpec, STORE, type SupplySpec, wholeLine } from '@loopwright/line'
import type { Scalar } from 'yaml'
import { distribution } from './distribution.ts'
import { flow, flowList, list, map, number, type Style, seconds, text, type Value } from './nodes.ts'

/** A zone by name, or the store. */
export const place = (line: LineSpec, end: number): Scalar => text(end === STORE ? 'store' : line.zones[end]!.name)

/** One section of all zones, called as it is where the file names none. */
export const isWhole = (line: LineSpec): boolean => JSON.stringify(line.sections) === JSON.stringify(wholeLine(line.zones.length))

/** What only some lines have. */
export function general(line: LineSpec, style: Style): [string, Value | null][] {
  const station = (index: number): Scalar => text(line.stations[index]!.name)
  const none = <T>(parts: readonly T[], value: () => Value): Value | null => (parts.length === 0 ? null : value())
  return [
    [
      'sections',
      isWhole(line)
        ? null
        : map(
            'sections',
            style,
            line.sections.map(({ name, zones }) => [name, flowList(zones.map((zone) => place(line, zone)))]),
          ),
    ],
    [
      'operators',
      none(line.operators, () =>
        map(
          'operators',
          style,
          line.operators.map(({ name, stations, start }) => [
            name,
            flow([
              ['stations', flowList(stations.map(station))],
              ['start', station(start)],
            ]),
          ]),
        ),
      ),
    ],
    [
      'walks',
      none(line.walks, () =>
        list(
          'walks',
          style,
          line.walks.map(({ between, seconds: lasts }) =>
            flow([
              ['between', flowList(between.map(station))],
              ['lasts', seconds(lasts)],
            ]),
          ),
        ),
      ),
    ],
    ['supply', supplyOf(line.supply, 'supply')],
    [
      'inspections',
      none(line.inspections, () =>
        map(
          'inspections',
          style,
          line.inspections.map(({ task, rejectProbability }) => [line.tasks[task]!, number(rejectProbability)]),
        ),
      ),
    ],
    [
      'rework',
      none(line.rework, () =>
        map(
          'rework',
          style,
          line.rework.map(({ task, only }) => [line.tasks[task]!, text(only ? 'only' : 'again')]),
        ),
      ),
    ],
    ['repairCrews', line.repairCrews === null ? text('unlimited') : number(line.repairCrews)],
  ]
}

/** @param usual  name that it has where the file says none */
export function supplyOf({ name, arrivals, queueLimit }: SupplySpec, usual: string): Value {
  const named: [string, Value | null] = ['name', name === usual ? null : text(name)]
  if (arrivals.kind === 'always') return name === usual ? text('always') : flow([named])
  return flow([
    named,
    arrivals.kind === 'every' ? ['every', distribution(arrivals.seconds)] : ['times', flowList(arrivals.instants.map(seconds))],
    ['queue', queueLimit === null ? text('unlimited') : number(queueLimit)],
  ])
}

export function mergeOf(line: LineSpec, merge: MergeSpec): Value {
  return merge.kind === 'priority' ? flow([['priority', flowList(merge.from.map((zone) => place(line, zone)))]]) : text(merge.kind)
}
