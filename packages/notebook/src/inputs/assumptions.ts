/** All inputs of a study as tables, in shop-floor units, so that whoever knows the plant can find the wrong one. */
import type { Table } from '@loopwright/charts/table'
import type { SweepResult } from '@loopwright/study'
import type { Scenario } from '@loopwright/scenario'
import { type ProseCell, proseCell, type TableCell, tableCell } from '../cells/cell.ts'
import { titledLine } from '../words/titledLine.ts'
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
    { ...proseCell('section-inputs', '## Assumptions and inputs'), pageOnly: true },
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
