/** Tables of a time study. */
import { formatNumber, formatShare, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import type { TaskTimes } from '@loopwright/measure'
import { secondsWords, timesName } from './timesWords.ts'

const STANDS = {
  curve: 'a curve',
  values: 'its values',
  constant: 'one time',
  'mean and spread': 'lognormal, mean and spread',
  'mean alone': 'lognormal, mean, usual spread',
} as const

/** What is simulated, in a few words. */
function simulatedBy({ stands, choice }: TaskTimes): string {
  const fit = choice?.chosen?.fit
  if (fit === undefined) return STANDS[stands]
  return `${fit.family}${fit.shift > 0 ? ` above ${formatNumber(fit.shift, 1)} s` : ''}`
}

/** Each task: how long, how surely, how it spreads. */
export function taskTable(studies: readonly TaskTimes[], relative: number): Table {
  const variants = studies.some(({ variant }) => variant !== null)
  return tableOf<TaskTimes>({
    caption: 'Measured times',
    columns: [
      wordColumn('Task', 'task', 'name of the task', ({ task }) => task),
      ...(variants
        ? [wordColumn<TaskTimes>('Variant', 'variant', 'name of the variant; empty: not told', ({ variant }) => variant ?? '')]
        : []),
      { head: 'Times', text: ({ n }) => formatNumber(n, 0), data: [['n', 'times measured', ({ n }) => n]] },
      {
        head: 'Mean, s',
        text: ({ mean, cycles }) => `${secondsWords(mean)}${cycles === null ? '' : ` ± ${secondsWords(cycles.knownTo * mean)}`}`,
        data: [
          ['mean_s', 'mean, seconds', ({ mean }) => mean],
          [
            'half_width_s',
            'half-width of the 95 % interval of the mean, seconds; empty: one time',
            ({ mean, cycles }) => (cycles === null ? null : cycles.knownTo * mean),
          ],
        ],
      },
      {
        head: 'Spread',
        text: ({ cv }) => (cv === null ? '–' : formatShare(cv)),
        data: [['cv', 'standard deviation over mean; empty: one time', ({ cv }) => cv]],
      },
      {
        head: 'P10–P90, s',
        text: ({ p10, p90 }) => `${secondsWords(p10)}–${secondsWords(p90)}`,
        data: [
          ['least_s', 'shortest, seconds', ({ least }) => least],
          ['p10_s', 'nine of ten are longer, seconds', ({ p10 }) => p10],
          ['median_s', 'median, seconds', ({ median }) => median],
          ['p90_s', 'nine of ten are shorter, seconds', ({ p90 }) => p90],
          ['most_s', 'longest, seconds', ({ most }) => most],
        ],
      },
      {
        head: `More for ± ${formatShare(relative)}`,
        text: ({ cycles }) => (cycles === null ? '–' : formatNumber(cycles.more, 0)),
        data: [
          ['cycles_needed', 'times needed for the half-width asked for', ({ cycles }) => cycles?.needed ?? null],
          ['cycles_more', 'beyond those there are', ({ cycles }) => cycles?.more ?? null],
          ['cycles_handbook', 'by the formula of work study with 2 in place of t', ({ cycles }) => cycles?.handbook ?? null],
        ],
      },
      wordColumn('Simulated', 'simulated', 'what is simulated', simulatedBy),
    ],
    rows: studies,
    note: 'Spread: standard deviation as a share of the mean. P10–P90: eight of ten times.',
  })
}

/** Means by person. */
export function peopleTable(studies: readonly TaskTimes[]): Table {
  const rows = studies.flatMap((one) => one.people!.people.map((person) => ({ one, person, p: one.people!.p })))
  return tableOf<(typeof rows)[number]>({
    caption: 'Times by operator',
    columns: [
      wordColumn('Task', 'task', 'name of the task, and of the variant', ({ one }) => timesName(one)),
      wordColumn('Operator', 'operator', 'who was timed', ({ person }) => person.name),
      { head: 'Times', text: ({ person }) => formatNumber(person.n, 0), data: [['n', 'times measured', ({ person }) => person.n]] },
      {
        head: 'Mean, s',
        text: ({ person }) => secondsWords(person.mean),
        data: [['mean_s', 'mean, seconds', ({ person }) => person.mean]],
      },
      {
        head: 'Against all',
        text: ({ one, person }) => `${person.mean >= one.mean ? '+' : '−'}${formatShare(Math.abs(person.mean / one.mean - 1))}`,
        data: [['against_all', 'mean of the operator over the mean of all, less 1', ({ one, person }) => person.mean / one.mean - 1]],
      },
      {
        head: 'Chance',
        text: ({ p }) => (p === null ? '–' : p < 0.001 ? '< 0.001' : formatNumber(p, 3)),
        data: [['p', 'chance of means so far apart where all work alike (F test); empty: too few times', ({ p }) => p]],
      },
    ],
    rows,
    note: 'Chance: how often means lie so far apart by luck alone. Times of all operators are simulated together.',
  })
}

/** Each curve that was tried. */
export function fitTable(studies: readonly TaskTimes[]): Table {
  const rows = studies.flatMap((one) =>
    one.choice!.candidates.map((candidate) => ({ one, candidate, chosen: candidate === one.choice!.chosen })),
  )
  return tableOf<(typeof rows)[number]>({
    caption: 'Curves that were tried',
    columns: [
      wordColumn('Task', 'task', 'name of the task, and of the variant', ({ one }) => timesName(one)),
      wordColumn('Curve', 'family', 'family of the curve', ({ candidate }) => candidate.fit.family),
      {
        head: 'Above, s',
        text: ({ candidate }) => formatNumber(candidate.fit.shift, 1),
        data: [['shift_s', 'taken off before the fit, seconds', ({ candidate }) => candidate.fit.shift]],
      },
      {
        head: 'A²',
        text: ({ candidate }) =>
          candidate.test.goodness.andersonDarling === null ? '–' : formatNumber(candidate.test.goodness.andersonDarling, 2),
        data: [
          [
            'anderson_darling',
            'Anderson–Darling statistic; empty: the curve excludes a value',
            ({ candidate }) => candidate.test.goodness.andersonDarling,
          ],
        ],
      },
      {
        head: 'p',
        text: ({ candidate }) => formatNumber(candidate.test.pAndersonDarling, 2),
        data: [
          ['p', 'share of samples from the curve that lie as far from their own fit', ({ candidate }) => candidate.test.pAndersonDarling],
          ['samples', 'samples of the bootstrap', ({ candidate }) => candidate.test.samples],
        ],
      },
      {
        head: 'AICc',
        text: ({ candidate }) => formatNumber(candidate.fit.aicc!, 1),
        data: [['aicc', 'Akaike information, corrected; the lower the better', ({ candidate }) => candidate.fit.aicc]],
      },
      wordColumn('Verdict', 'verdict', 'chosen, holds, or does not hold', ({ candidate, chosen }) =>
        chosen ? 'chosen' : candidate.holds ? 'holds' : 'does not hold',
      ),
    ],
    rows,
    marked: ({ chosen }) => chosen,
    note: 'A curve holds where p is at least 0.05; of those that hold the lowest AICc is taken, and the lognormal where it is within 2 of that. Few values cannot tell the families apart; mean and spread decide the output.',
  })
}
