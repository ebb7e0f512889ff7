/** Time studies of published data, the whole way from a table: certified means and deviations of NIST, Statistical Reference Datasets, univariate summary statistics. */
import { cyclesFor, readTable, readTimes, timeStudy } from '@loopwright/measure'
import { expect, test } from 'vitest'
import { expectRelative, readCases } from './vectors.ts'

/** As tables write them: a decimal point between commas, a decimal comma between semicolons or tabs. */
const FORMS = [
  { separator: ',', decimal: '.' },
  { separator: ';', decimal: ',' },
  { separator: '\t', decimal: ',' },
] as const

const sets = readCases('accumulators', 'moments').filter(({ input }) => input.data?.every((value: number) => value > 0 && value < 86_400))

test('the sets that could be times of a task', () => expect(sets.map(({ input }) => input.set)).toEqual(['lottery', 'mavro', 'michelson']))

test.each(sets.flatMap((set) => FORMS.map((form) => ({ set, ...form, name: `${set.input.set} ${JSON.stringify(form.separator)}` }))))(
  '$name',
  ({ set, separator, decimal }) => {
    const rows = (set.input.data as number[]).map((value) => `set${separator}${String(value).replace('.', decimal)}`)
    const table = readTimes(readTable(new TextEncoder().encode(`task${separator}seconds\n${rows.join('\n')}\n`), 'set.csv'), {
      decimal: decimal === ',' ? 'comma' : 'point',
    })
    expect([table.account.read, table.account.refusals]).toEqual([set.input.n, []])
    const [study] = timeStudy(table.observations, { keepValues: true })
    expectRelative(study!.mean, Number(set.expect.mean), 1e-12)
    expectRelative(study!.sd, Number(set.expect.sd), 1e-9)
  },
)

const fitted = ['lognormal', 'gamma', 'weibull'].flatMap((family) =>
  readCases('fitting', family)
    // of G120 no curve is asked for: its values are two kinds of work
    .filter(({ input }) => input.set === 'T30' || input.set === 'BB')
    .map((of) => ({ family, of, name: `${family} ${of.input.set}` })),
)

test('both data sets with three families each', () => expect(fitted).toHaveLength(6))

test.each(fitted)('a curve from a table: $name', ({ family, of: expected }) => {
  const rows = (expected.input.data as number[]).map((value) => `bearing,${value}`)
  const { observations } = readTimes(readTable(new TextEncoder().encode(`task,seconds\n${rows.join('\n')}\n`), 'set.csv'))
  const [study] = timeStudy(observations, { samples: 19 })
  const fit = study!.choice!.candidates.find((one) => one.fit.family === family)!.fit
  expectRelative(fit.logLikelihood, expected.expect.logLikelihood, 1e-9)
  for (const [index, one] of fit.parameters.entries()) expectRelative(one, expected.expect.parameters[index], 1e-8)
})

test('cycles for ± 5 % of the times of T30: 42 by t', () => {
  const { input } = readCases('fitting', 'lognormal').find((one) => one.input.set === 'T30')!
  expect(cyclesFor(input.data, 0.05)!.needed).toBe(42)
})
