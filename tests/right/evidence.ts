/** What speaks for the numbers of the product: the kinds of checks, where they stand, and on what they rest; and what nothing here speaks for. */
import { readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { CANARIES } from '../soak/canaries.ts'
import { filesUnder, type Source, TOP } from '../tidy/sources.ts'

export interface Evidence {
  readonly id: string
  readonly title: string
  /** what it shows, and what it would not */
  readonly shows: string
  /** folders and test files, from the top of the project */
  readonly places: readonly string[]
  /** rests on something from outside the project, which is named beside each check */
  readonly outside: boolean
}

export const EVIDENCE: readonly Evidence[] = [
  {
    id: 'exact',
    title: 'Exactly known values',
    shows:
      'Lines whose output, variance or waiting is known by a closed form or a Markov chain; constant times to the last bit. They are small lines: a mistake that only a large line shows is for the second program to find. `npm run proof` measures the same values for ten minutes, more closely.',
    places: ['tests/oracle/exactValues.test.ts', 'tests/oracle/exact', 'tests/oracle/carrierAnswers.test.ts'],
    outside: true,
  },
  {
    id: 'formulas',
    title: 'Formulas of queueing theory',
    shows: 'Open lines, shared servers, supplies and repair against formulas that know nothing of this program, by means over runs.',
    places: ['tests/oracle/closedForms.test.ts'],
    outside: false,
  },
  {
    id: 'second-program',
    title: 'A second program',
    shows:
      'The model page read aloud: an engine written from that page alone, slow on purpose, agrees on random lines in every number and event. What the page itself leaves out or has wrong, both have.',
    places: ['tests/oracle/readAloud'],
    outside: false,
  },
  {
    id: 'laws',
    title: 'Laws that every run keeps',
    shows:
      'Little’s law, balances of carriers and products, shares that sum to one; limits that no run exceeds; the same line written otherwise gives the same numbers.',
    places: [
      'tests/oracle/identities',
      'tests/oracle/limits.test.ts',
      'tests/limitsHold.test.ts',
      'tests/metamorphic.test.ts',
      'tests/generalLines.test.ts',
      'tests/randomLines.test.ts',
      'tests/randomGraphs.test.ts',
      'tests/linesFromCode.test.ts',
    ],
    outside: false,
  },
  {
    id: 'engines',
    title: 'Two engines, any order, any number of threads',
    shows:
      'Both engines of the product are equal in every number, with and without a trace; the order in which simultaneous events are stored, and the number of threads, change no bit.',
    places: ['tests/twoEngines.test.ts', 'tests/traceChangesNothing.test.ts', 'tests/determinism.test.ts'],
    outside: false,
  },
  {
    id: 'canaries',
    title: 'Engines broken on purpose',
    shows: `${CANARIES.length} engines, each with one line changed, are all found by a short soak: the checks above can fail.`,
    places: ['tests/soak'],
    outside: false,
  },
  {
    id: 'statistics',
    title: 'Published statistics',
    shows: 'Distributions, intervals, fits, selections and sequences against certified and published values and reference libraries.',
    places: ['tests/oracle/statistics'],
    outside: true,
  },
  {
    id: 'coverage',
    title: 'Intervals that cover what they say',
    shows: 'On lines whose output is exactly known, 95 % intervals hold it in 95 of 100 studies.',
    places: ['tests/oracle/coverage.test.ts'],
    outside: false,
  },
  {
    id: 'demo',
    title: 'The line of the demo',
    shows: 'Its inputs are invented: its numbers are compared with a program of its own and prove nothing about any real line.',
    places: ['tests/oracle/demo.test.ts'],
    outside: false,
  },
  {
    id: 'told',
    title: 'What is told is what was computed',
    shows: 'Sentences, tables and pages of every command on lines with every kind of limit are held against the numbers of the same run.',
    places: ['tests/told', 'tests/page', 'tests/notebooks.test.ts', 'tests/docs.test.ts', 'tests/guides'],
    outside: false,
  },
  {
    id: 'faults',
    title: 'Faults survived',
    shows:
      'Processes killed, files damaged, servers lost and messages sent twice: no run is lost or counted twice. Runs without end are stopped.',
    places: ['tests/cli/killed.test.ts', 'tests/cli/endless.test.ts', 'tests/faults', 'packages/study/src/store'],
    outside: false,
  },
  {
    id: 'spoilt',
    title: 'Spoilt texts',
    shows: 'Whatever reads a text that somebody else wrote takes thousands of spoilt ones: an answer or a word, in bounded time.',
    places: ['tests/fuzz', 'packages/cli/src/hostile.test.ts', 'packages/measure/src/table', 'packages/scenario/src/text'],
    outside: false,
  },
]

/** What no check here speaks for. */
export const NOT_CHECKED: readonly string[] = [
  'No real line: nobody has held a simulated forecast against the counts of a line that runs. The trial and the first weeks of your own line are that check.',
  'Your inputs: times, stops and mix are taken as you give them. A forecast is as good as they are.',
  'What the model leaves out: each page lists it under its cautions.',
  'Physics: speeds, ramps and stop times are figures that you give, not computed from masses and drives.',
  'Hazards: nothing here judges whether a line may run. Guidance values are shown with their source; local codes and qualified people decide.',
  'Browsers other than Chromium, and Firefox for the page of one study; systems other than Linux; kinds of processors other than that of the tests.',
]

/** The sources that a file names: "Source: …" in comments, `source` in data beside the tests. */
export interface Named {
  /** from the top of the project */
  readonly file: string
  readonly sources: readonly string[]
}

/** Of each file of a kind what it names; files that name nothing are left out. */
export function namedBy({ places }: Evidence): Named[] {
  return places
    .flatMap(filesOf)
    .map(({ file, text }) => ({ file, sources: [...new Set(file.endsWith('.json') ? dataSources(text) : commentSources(text))] }))
    .filter(({ sources }) => sources.length > 0)
}

/** All of a kind, each once, in order. */
export const sourcesOf = (evidence: Evidence): string[] => [...new Set(namedBy(evidence).flatMap(({ sources }) => sources))].toSorted()

/**
 * What a check rests on: the data that it is named after, as `special-04` and `breakdown-ring three-stations` are after special.json and breakdown-ring.json, else
 * what its own file names.
 *
 * @param file   of the check, with its whole path
 * @param check  its name
 */
export function sourcesOfCheck(named: readonly Named[], file: string, check: string): readonly string[] {
  const data = named.find((each) => each.file.endsWith('.json') && isNamedAfter(check, basename(each.file, '.json')))
  return (data ?? named.find((each) => file.endsWith(`/${each.file}`)))?.sources ?? []
}

const isNamedAfter = (check: string, data: string): boolean => new RegExp(`(?:^|[^\\w-])${data}(?:-\\d+\\b| )`).test(check)

const dataSources = (text: string): string[] =>
  [...text.matchAll(/"source":\s*"((?:[^"\\]|\\.)*)"/g)].map(([, source]) => JSON.parse(`"${source}"`) as string)

const commentSources = (text: string): string[] =>
  [...text.matchAll(/(?:^|\s)Sources?: ([^`'\n]+?)(?:\s*\*\/)?$/gm)].map(([, source]) => source!.trim())

const filesOf = (place: string): Source[] =>
  /\.\w+$/.test(place) ? [{ file: place, text: readFileSync(join(TOP, place), 'utf8') }] : filesUnder(place, /\.(?:json|ts)$/)
