/** All inputs of a study as tables, in shop-floor units, so that whoever knows the plant can find the wrong one. */
import type { Table } from '@loopwright/charts/table'
import type { SweepResult } from '@loopwright/study'
import type { Scenario } from '@loopwright/scenario'
import { type ProseCell, sectionCell, type TableCell, tableCell } from '../cells/cell.ts'
import { titledLine } from '../words/titledLine.ts'
import { metresText } from './quantityWords.ts'
import { counted } from '../words/countedWords.ts'
import { planText } from '../words/planWords.ts'
import { generalInputs } from './generalInputs.ts'
import { lawInputs } from './lawInputs.ts'
import { lineInputs } from './lineInputs.ts'
import { stationInputs, variantInputs } from './stationInputs.ts'
import { stopInputs, timeInputs } from './stopInputs.ts'

/** @param defaults  what the file does not say; null: nothing, or the file is not at hand */
export function assumptionCells(
  scenario: Scenario,
  result: Pick<SweepResult, 'law' | 'lawSeconds'>,
  defaults: Table | null,
): (ProseCell | TableCell)[] {
  const line = titledLine(scenario)
  const cell = (id: string, table: Table): TableCell => ({ ...tableCell(`inputs-${id}`, table), pageOnly: true })
  const stops = stopInputs(line)
  const general = generalInputs(line)
  return [
    sectionCell('section-inputs', 'Assumptions and inputs', inputsWords(scenario, defaults)),
    cell('time', timeInputs(scenario)),
    cell('line', lineInputs(line)),
    cell('stations', stationInputs(line)),
    cell('variants', variantInputs(line)),
    ...(general === null ? [] : [cell('general', general)]),
    ...(stops === null ? [] : [cell('stops', stops)]),
    ...(result.law === null ? [] : [cell('law', lawInputs(line, result.law, result.lawSeconds))]),
    ...(defaults === null ? [] : [cell('defaults', defaults)]),
  ]
}

/** All of them in one line: "22 zones, 33 m; 12 carriers; 9 stations; 6 stops; plan of 320 units per shift; 14 defaults." */
function inputsWords({ line, plan, stopEntries }: Scenario, defaults: Table | null): string {
  const lengths = line.zones.map(({ lengthMetres }) => lengthMetres)
  const metres = lengths.reduce<number | null>((sum, length) => (sum === null || length === null ? null : sum + length), 0)
  const parts = [
    `${counted(line.zones.length, 'zone')}${metres === null ? '' : `, ${metresText(metres)}`}`,
    counted(line.carriers.count, 'carrier'),
    counted(line.stations.length, 'station'),
    ...(line.operators.length === 0 ? [] : [counted(line.operators.length, 'operator')]),
    ...(line.variants.length < 2 ? [] : [counted(line.variants.length, 'product variant')]),
    stopEntries.length === 0 ? 'no stops' : `${counted(stopEntries.length, 'kind')} of stops`,
    plan === null ? 'no plan' : `plan of ${planText(plan.units)} per ${plan.per}`,
    ...(defaults === null ? [] : [`${counted(defaults.rows.length, 'default')} not said by the file`]),
  ]
  return `${parts.join('; ')}.`
}
