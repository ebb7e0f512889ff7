/** All inputs of a study as tables, in shop-floor units, so that whoever knows the plant can find the wrong one. */
import type { Table } from '@loopwright/charts'
import type { Scenario } from '@loopwright/scenario'
import type { SweepResult } from '@loopwright/study'
import { oneView, type ProseCell, type TableCell } from '../cell.ts'
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
  const { line } = scenario
  const cell = (id: string, table: Table): TableCell => ({ kind: 'table', id: `inputs-${id}`, where: 'page', views: oneView(table) })
  const stops = stopInputs(line)
  const general = generalInputs(line)
  return [
    { kind: 'prose', id: 'section-inputs', markdown: '## Assumptions and inputs' },
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
