/** Output by replication: for files of tables alone. */
import { dataColumn, tableOf, wordColumn } from '@loopwright/charts/table'
import type { DataCell } from '../cells/cell.ts'
import type { Period } from '../sweep/period.ts'

/**
 * One row for each simulated window of each line.
 *
 * @param what  what a name is of, such as "line" or "order": heads its column
 */
export function unitsData(
  id: string,
  what: string,
  lines: readonly { readonly name: string; readonly units: readonly number[] }[],
  { one, many }: Pick<Period, 'one' | 'many'>,
): DataCell {
  const rows = lines.flatMap(({ name, units }) => units.map((made, replication) => ({ name, made, replication })))
  type Row = (typeof rows)[number]
  return {
    kind: 'data',
    id,
    table: tableOf<Row>({
      caption: `Units of each simulated ${one}`,
      columns: [
        wordColumn(what, what, `name of the ${what}`, ({ name }) => name),
        dataColumn(
          'replication',
          `simulated ${one}, from 0: the same number is the same ${one} for each ${what}`,
          ({ replication }) => replication,
        ),
        dataColumn('units', `units made in it, one of the simulated ${many}`, ({ made }) => made),
      ],
      rows,
    }),
  }
}
