/** The verdicts as a page: what was found, a line for each family, then the values of each family under what it is and where its values come from. */
import type { Table } from '@loopwright/charts'
import { type Cell, oneView } from '@loopwright/notebook'
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
    { kind: 'answer', id: 'answer', sentences: [summary], sure: [sure] },
    { kind: 'table', id: 'families', where: 'page', views: oneView(familyTable(families)) },
    ...families.flatMap(([family, of]): Cell[] => [
      { kind: 'prose', id: `about-${family}`, markdown: `## ${family}\n\n${about.get(family) ?? ''}\n\n${sources(of)}` },
      { kind: 'table', id: `values-${family}`, where: 'page', views: oneView(valueTable(family, of)) },
    ]),
  ]
}

const column = (head: string, align: 'left' | 'right') => ({ head, align, pageOnly: false })
const row = (cells: readonly string[], marked: boolean) => ({ cells, marked })

function sources(verdicts: readonly Verdict[]): string {
  const named = [...new Set(verdicts.map(({ source }) => source))]
  return named.map((source) => `Source: ${source}.`).join('\n\n')
}

/** With hyphens at which no line ends: a narrow screen shows a row in one line, and scrolls for what is less asked for. */
const unbroken = (id: string): string => id.replaceAll('-', '\u2011')

function familyTable(families: readonly (readonly [string, readonly Verdict[]])[]): Table {
  return {
    caption: 'Families of exactly known values',
    columns: [column('Family', 'left'), column('Values', 'right'), column('Hold', 'right'), column('Most off', 'right')],
    rows: families.map(([family, of]) =>
      row(
        [family, `${of.length}`, `${of.filter(({ holds }) => holds).length}`, `${Math.max(...of.map(errors)).toFixed(1)}`],
        of.some(({ holds }) => !holds),
      ),
    ),
    note: 'Most off: in standard errors of the simulated mean. Marked rows hold values that do not hold.',
  }
}

/** How far off, in standard errors. */
const errors = ({ value, simulated, standardError }: Verdict): number =>
  standardError === 0 ? 0 : Math.abs(simulated - value) / standardError

function valueTable(family: string, verdicts: readonly Verdict[]): Table {
  return {
    caption: `Values of ${family}`,
    columns: [
      column('Line', 'left'),
      column('Value', 'right'),
      column('Off', 'right'),
      column('Seen', 'right'),
      column('Simulated', 'right'),
      column('Runs', 'right'),
    ],
    rows: verdicts.map(({ id, value, simulated, replications, sees, holds }) =>
      row(
        [unbroken(id), value.toPrecision(5), percent(simulated / value - 1), percent(sees), simulated.toPrecision(6), `${replications}`],
        !holds,
      ),
    ),
    note: null,
  }
}
