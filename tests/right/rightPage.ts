/** The page that answers "How do I know it is right?": each kind of check with what it rests on and how it went, then what is not checked. */
import { type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import { type Cell, proseCell, tableCell } from '@loopwright/notebook'
import { type Evidence, EVIDENCE, NOT_CHECKED, sourcesOf } from './evidence.ts'

/** What a run of the tests tells, of its report only what is used here. */
export interface TestReport {
  readonly testResults: readonly {
    /** the file, with its whole path */
    readonly name: string
    readonly status: string
    readonly assertionResults: readonly { readonly status: string; readonly fullName: string }[]
  }[]
}

export interface Judged {
  readonly evidence: Evidence
  readonly passed: number
  /** names of the tests, or of files that could not be loaded */
  readonly failed: readonly string[]
}

export function judged(report: TestReport): Judged[] {
  return EVIDENCE.map((evidence) => {
    const files = report.testResults.filter(({ name }) => evidence.places.some((place) => isIn(name, place)))
    const tests = files.flatMap(({ assertionResults }) => assertionResults)
    const unloaded = files.filter(({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0)
    return {
      evidence,
      passed: tests.filter(({ status }) => status === 'passed').length,
      failed: [...unloaded.map(({ name }) => name), ...tests.filter(({ status }) => status === 'failed').map(({ fullName }) => fullName)],
    }
  })
}

const isIn = (file: string, place: string): boolean => (place.endsWith('.ts') ? file.endsWith(`/${place}`) : file.includes(`/${place}/`))

const result = ({ passed, failed }: Judged): string =>
  failed.length > 0 ? `${failed.length} failed` : passed === 0 ? 'not run' : 'all passed'

export function rightCells(all: readonly Judged[]): Cell[] {
  const passed = all.reduce((sum, each) => sum + each.passed, 0)
  const failed = all.flatMap((each) => each.failed)
  const idle = all.filter((each) => result(each) === 'not run').map(({ evidence }) => evidence.title)
  return [
    {
      kind: 'answer',
      id: 'answer',
      sentences: [
        failed.length > 0
          ? `${failed.length} of ${passed + failed.length} checks fail: do not rely on its numbers before they are mended.`
          : `${passed} checks pass, none fails; they are of ${all.length - idle.length} of ${all.length} kinds.`,
        ...(idle.length > 0 ? [`Not run this time: ${idle.join(', ')}.`] : []),
      ],
    },
    tableCell('checks', checkTable(all)),
    ...(failed.length > 0 ? [proseCell('failed', '## What failed', ...failed.map((name) => `- ${plain(name)}`))] : []),
    ...all.map(({ evidence }) => {
      const sources = sourcesOf(evidence)
      const listed = sources.length > 0 ? [`Sources, ${sources.length}:`, sources.map((source) => `- ${plain(source)}`).join('\n')] : []
      return proseCell(
        `about-${evidence.id}`,
        `## ${evidence.title}`,
        evidence.shows,
        ...listed,
        `Where: ${evidence.places.map((place) => `\`${place}\``).join(', ')}.`,
      )
    }),
    proseCell('not-checked', '## What is not checked', NOT_CHECKED.map((line) => `- ${line}`).join('\n')),
  ]
}

/** Text of others as prose that means nothing but itself. */
const plain = (text: string): string => text.replaceAll(/[\\`*_[\]<>&#|~]/g, String.raw`\$&`)

function checkTable(all: readonly Judged[]): Table {
  return tableOf<Judged>({
    caption: 'Kinds of checks, and how they went',
    columns: [
      wordColumn('Check', 'check', 'kind of check', ({ evidence }) => evidence.title),
      { head: 'Passed', text: ({ passed }) => `${passed}`, data: [['passed', 'tests that passed', ({ passed }) => passed]] },
      { head: 'Failed', text: ({ failed }) => `${failed.length}`, data: [['failed', 'tests that failed', ({ failed }) => failed.length]] },
      {
        head: 'Sources',
        text: ({ evidence }) => `${sourcesOf(evidence).length}`,
        data: [['sources', 'sources from outside the project', ({ evidence }) => sourcesOf(evidence).length]],
      },
      wordColumn('Result', 'result', 'all passed, failed or not run', result),
    ],
    rows: all,
    marked: (each) => each.failed.length > 0,
    note: 'Sources: works and data from outside the project that values were taken from; where none is named, the check stands on reasoning alone.',
  })
}
