/** The verdicts as a page: what was found, a line for each family, then the values of each family under what it is and where its values come from. */
import { type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import { type Cell, proseCell, tableCell } from '@loopwright/notebook'
import { FALSE_ALARM, POWER, SIZES, type Verdict } from './judge.ts'

const percent = (value: number, digits = 2): string => `${(100 * value).toFixed(digits)} %`

/** "479 of 479 exactly known values judged, 0 do not hold." and what that is worth. */
export function proofSentences(verdicts: readonly Verdict[], all: number): { readonly summary: string; readonly sure: string } {
  const failed = verdicts.filter(({ holds }) => !holds).length
  return {
    summary: `${verdicts.length} of ${all} exactly known values judged, ${failed} do not hold.`,
    sure: `A right engine fails one of them with a chance of ${FALSE_ALARM}. A mean output that is ${percent(SIZES.rate)} off, a wait or a queue that is ${percent(SIZES.queue)} off, or a variance that is ${percent(SIZES.spread)} off, is found with a chance of ${percent(POWER, 1)}.`,
  }
}

/** @param about  what each family is */
export function proofCells(verdicts: readonly Verdict[], all: number, about: ReadonlyMap<string, string>): Cell[] {
  const { summary, sure } = proofSentences(verdicts, all)
  const names = [...new Set(verdicts.map(({ family }) => family))]
  const families = names.map((family) => [family, verdicts.filter((verdict) => verdict.family === family)] as const)
  return [
    { kind: 'answer', id: 'answer', sentences: [summary] },
    tableCell('families', familyTable(families)),
    { kind: 'sure', id: 'sure', sentences: [sure] },
    ...families.flatMap(([family, of]): Cell[] => [
      proseCell(`about-${family}`, `## ${family}`, about.get(family) ?? '', sources(of)),
      tableCell(`values-${family}`, valueTable(family, of)),
    ]),
  ]
}

function sources(verdicts: readonly Verdict[]): string {
  const named = [...new Set(verdicts.map(({ source }) => source))]
  return named.map((source) => `Source: ${source}.`).join('\n\n')
}

/** With hyphens at which no line ends: a narrow screen shows a row in one line, and scrolls for what is less asked for. */
const unbroken = (id: string): string => id.replaceAll('-', '\u2011')

type Family = readonly [family: string, verdicts: readonly Verdict[]]

function familyTable(families: readonly Family[]): Table {
  const most = (of: readonly Verdict[]): number => Math.max(...of.map(errors))
  const hold = (of: readonly Verdict[]): number => of.filter(({ holds }) => holds).length
  return tableOf<Family>({
    caption: 'Families of exactly known values',
    columns: [
      wordColumn('Family', 'family', 'name of the family', ([family]) => family),
      { head: 'Values', text: ([, of]) => `${of.length}`, data: [['values', 'values judged', ([, of]) => of.length]] },
      { head: 'Hold', text: ([, of]) => `${hold(of)}`, data: [['hold', 'values that hold', ([, of]) => hold(of)]] },
      { head: 'Most off', text: ([, of]) => most(of).toFixed(1), data: [['most_off', 'in standard errors', ([, of]) => most(of)]] },
    ],
    rows: families,
    marked: ([, of]) => hold(of) < of.length,
    note: 'Most off: in standard errors of the simulated mean. Marked rows hold values that do not hold.',
  })
}

/** How far off, in standard errors. */
const errors = ({ value, simulated, standardError }: Verdict): number =>
  standardError === 0 ? 0 : Math.abs(simulated - value) / standardError

function valueTable(family: string, verdicts: readonly Verdict[]): Table {
  const off = ({ value, simulated }: Verdict): number => simulated / value - 1
  return tableOf<Verdict>({
    caption: `Values of ${family}`,
    columns: [
      { ...wordColumn<Verdict>('Line', 'line', 'name of the line', ({ id }) => id), text: ({ id }) => unbroken(id) },
      { head: 'Value', text: ({ value }) => value.toPrecision(5), data: [['value', 'exactly known', ({ value }) => value]] },
      { head: 'Off', text: (verdict) => percent(off(verdict)), data: [['off', 'share of the value', off]] },
      { head: 'Seen', text: ({ sees }) => percent(sees), data: [['seen', 'share of the value that would be found', ({ sees }) => sees]] },
      {
        head: 'Simulated',
        text: ({ simulated }) => simulated.toPrecision(6),
        data: [['simulated', 'mean of the runs', ({ simulated }) => simulated]],
      },
      { head: 'Runs', text: ({ replications }) => `${replications}`, data: [['replications', 'runs', ({ replications }) => replications]] },
    ],
    rows: verdicts,
    marked: ({ holds }) => !holds,
  })
}
