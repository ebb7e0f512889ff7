/** The tables of `carriers --csv`: those of a sweep, and what one carrier more brings. */
import type { CarrierStudy } from '@loopwright/study'
import type { CsvTable } from '../csv.ts'
import { countTables } from './sweepTables.ts'

export function carriersTables(study: CarrierStudy): CsvTable[] {
  const steps: CsvTable = {
    name: 'steps',
    columns: ['carriers', 'carriers_more', 'replications', 'units_more', 'units_more_low', 'units_more_high'],
    rows: study.steps.map(({ from, to, difference }) => [from, to, difference.n, difference.mean, difference.low, difference.high]),
  }
  return [...countTables(study.counts, study.lawSeconds), steps]
}
