/** What differs between the inputs of each line and those of the first. */
import { type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import { type Difference, type Scenario, scenarioDifferences } from '@loopwright/scenario'

/** @param lines  of the result, in the order of the scenarios */
export function changedTable(scenarios: readonly Scenario[], { lines }: { readonly lines: readonly { readonly name: string }[] }): Table {
  const [first, ...others] = scenarios
  const changes = others.flatMap((other, index) =>
    scenarioDifferences(first!, other).map((change) => ({ line: lines[index + 1]!.name, change })),
  )
  return tableOf<Changed>({
    caption: `Inputs that differ from ${lines[0]!.name}`,
    columns: [
      wordColumn('Line', 'line', 'name of the line', ({ line }) => line),
      wordColumn('Input', 'input', 'field of the scenario', ({ change: { path, places } }) =>
        places.length === 0 ? path : `${path} (${placesWords(places)})`,
      ),
      {
        ...wordColumn<Changed>('Before', 'before', 'in the first line', ({ change }) => change.before ?? 'none'),
        text: ({ change }) => inHours(change.before ?? 'none'),
      },
      {
        ...wordColumn<Changed>('After', 'after', 'in this line', ({ change }) => change.after ?? 'none'),
        text: ({ change }) => inHours(change.after ?? 'none'),
      },
    ],
    rows: changes,
    note: changes.length === 0 ? 'None: the lines have the same inputs.' : null,
  })
}

interface Changed {
  readonly line: string
  readonly change: Difference
}

/** "39600 s ± 20 %" as "11 h ± 20 %": whole hours and halves, as somebody would write them. */
export const inHours = (value: string): string =>
  value.replace(/\b(\d+) s\b/g, (text, seconds: string) =>
    Number(seconds) >= 7200 && Number(seconds) % 1800 === 0 ? `${Number(seconds) / 3600} h` : text,
  )

/** places of one change that are all named */
const PLACES_MAX = 4

const placesWords = (places: readonly string[]): string =>
  places.length <= PLACES_MAX ? places.join(', ') : `${places.length} places, ${places[0]} … ${places.at(-1)}`
