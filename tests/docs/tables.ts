import { readCsv } from '@loopwright/scenario'

/**
 * Files of tables that a document does not list, and columns of which columns.csv says nothing.
 *
 * @param files   text by name
 * @param listed  the document; all tables of inputs are one entry
 */
export function tableFaults(files: ReadonlyMap<string, string>, listed: string): string[] {
  const told = readCsv(files.get('columns.csv') ?? '').rows.map(({ cells: [file, column, says] }) =>
    says === '' ? '' : `${file}.csv ${column}`,
  )
  return [...files].flatMap(([name, text]) => [
    ...(listed.includes(name.startsWith('inputs-') ? '`inputs-' : `\`${name}\``) ? [] : [`${name} is not listed`]),
    ...(name === 'columns.csv' ? [] : readCsv(text).columns.filter((column) => !told.includes(`${name} ${column}`))).map(
      (column) => `${name}: nothing is said of ${column}`,
    ),
  ])
}
