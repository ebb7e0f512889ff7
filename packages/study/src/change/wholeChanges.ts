/** Changes of a line by one whole: an operator more or fewer, a carrier, a repair crew. */
import { completeLine, type GivenLine, type LineSpec, startZones } from '@loopwright/line'
import { withCarriers } from './withCarriers.ts'

export interface WholeChange {
  readonly kind: 'operator' | 'carrier' | 'repair crew'
  /** of the operator; else what it is */
  readonly name: string
  readonly step: 1 | -1
  /** how many there are now: of operators those who cover the same stations */
  readonly count: number
  /** index of the operator who is doubled or goes; null: no operator */
  readonly operator: number | null
  readonly line: LineSpec
}

/**
 * All that can be; operators who cover the same stations are tried once.
 *
 * @example wholeChanges(line).map(({ name }) => name) // => ['carriers', 'carriers']
 */
export function wholeChanges(given: GivenLine): WholeChange[] {
  const line = completeLine(given)
  return [...operatorChanges(line), ...carrierChanges(line), ...crewChanges(line)]
}

function operatorChanges(line: LineSpec): WholeChange[] {
  const alike = new Map<string, number[]>()
  line.operators.forEach(({ stations }, index) => {
    const key = [...new Set(stations)].sort((a, b) => a - b).join()
    alike.set(key, [...(alike.get(key) ?? []), index])
  })
  return [...alike.values()].flatMap((group): WholeChange[] => {
    const first = line.operators[group[0]!]!
    const last = line.operators[group.at(-1)!]!
    const count = group.length
    const more: WholeChange = {
      kind: 'operator',
      name: first.name,
      step: 1,
      count,
      operator: group[0]!,
      line: { ...line, operators: [...line.operators, { ...first, name: nameOfNext(line, first.name) }] },
    }
    const without = line.operators.filter((_, index) => index !== group.at(-1))
    const enough = line.stations.every(
      ({ operatorsNeeded }, station) =>
        !last.stations.includes(station) ||
        without.filter(({ stations }) => stations.includes(station)).length >= Math.max(1, operatorsNeeded),
    )
    const fewer: WholeChange = {
      kind: 'operator',
      name: last.name,
      step: -1,
      count,
      operator: group.at(-1)!,
      line: { ...line, operators: without },
    }
    return enough ? [more, fewer] : [more]
  })
}

function nameOfNext({ operators }: LineSpec, name: string): string {
  for (let number = 2; ; number += 1) {
    const next = `${name} ${number}`
    if (!operators.some((one) => one.name === next)) return next
  }
}

function carrierChanges(line: LineSpec): WholeChange[] {
  const { count } = line.carriers
  return ([1, -1] as const).flatMap((step): WholeChange[] => {
    try {
      const changed = withCarriers(line, count + step)
      startZones(changed)
      return [{ kind: 'carrier', name: 'carriers', step, count, operator: null, line: changed }]
    } catch (error) {
      // this count cannot be
      if (error instanceof RangeError) return []
      throw error
    }
  })
}

function crewChanges(line: LineSpec): WholeChange[] {
  const crews = line.repairCrews
  if (crews === null) return []
  const of = (step: 1 | -1): WholeChange => ({
    kind: 'repair crew',
    name: 'repair crews',
    step,
    count: crews,
    operator: null,
    line: { ...line, repairCrews: crews + step },
  })
  return [...(crews < line.breakdowns.length ? [of(1)] : []), ...(crews > 1 ? [of(-1)] : [])]
}
