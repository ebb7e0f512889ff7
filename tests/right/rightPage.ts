/** The page that answers "How do I know it is right?": each kind of check with what it rests on and how it went, then what is not checked. */
import { type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import { type Cell, proseCell, tableCell } from '@loopwright/notebook'
import { type Evidence, EVIDENCE, namedBy, NOT_CHECKED, sourcesOf, sourcesOfCheck } from './evidence.ts'

/** What a run of the tests tells, of its report only what is used here. */
export interface TestReport {
  readonly testResults: readonly {
    /** the file, with its whole path */
    readonly name: string
    readonly status: string
    readonly assertionResults: readonly { readonly status: string; readonly fullName: string }[]
  }[]
}

/** One test, and how it went. */
export interface Check {
  readonly name: string
  /** from the top of the project */
  readonly file: string
  readonly result: 'passed' | 'failed' | 'not run'
  /** works and data that it rests on; empty: reasoning alone */
  readonly sources: readonly string[]
}

export interface Judged {
  readonly evidence: Evidence
  readonly checks: readonly Check[]
}

export function judged(report: TestReport): Judged[] {
  return EVIDENCE.map((evidence) => {
    const named = namedBy(evidence)
    const files = report.testResults.filter(({ name }) => evidence.places.some((place) => isIn(name, place)))
    const checks = files.flatMap(({ name: path, status, assertionResults }): Check[] => {
      const file = path.slice(path.search(/(?:tests|packages)\//))
      if (assertionResults.length === 0)
        return status === 'failed' ? [{ name: 'the file is loaded', file, result: 'failed', sources: [] }] : []
      return assertionResults.map(({ fullName, status: how }) => ({
        name: fullName,
        file,
        result: how === 'passed' || how === 'failed' ? how : 'not run',
        sources: sourcesOfCheck(named, path, fullName),
      }))
    })
    return { evidence, checks }
  })
}

const withResult = (checks: readonly Check[], result: Check['result']): Check[] => checks.filter((check) => check.result === result)

const isIn = (file: string, place: string): boolean => (place.endsWith('.ts') ? file.endsWith(`/${place}`) : file.includes(`/${place}/`))

const result = ({ checks }: Judged): string => {
  const failed = withResult(checks, 'failed').length
  return failed > 0 ? `${failed} failed` : withResult(checks, 'passed').length === 0 ? 'not run' : 'all passed'
}

export function rightCells(all: readonly Judged[]): Cell[] {
  const checks = all.flatMap((each) => each.checks)
  const [passed, failed] = [withResult(checks, 'passed').length, withResult(checks, 'failed')]
  const idle = all.filter((each) => result(each) === 'not run').map(({ evidence }) => evidence.title)
  return [
    {
      kind: 'answer',
      id: 'answer',
      sentences: [
        failed.length > 0
          ? `${failed.length} of ${passed + failed.length} checks ${failed.length === 1 ? 'fails' : 'fail'}: do not rely on the numbers before that is mended.`
          : `${passed} checks pass, none fails; they are of ${all.length - idle.length} of ${all.length} kinds.`,
        ...(idle.length > 0 ? [`Not run this time: ${idle.join(', ')}.`] : []),
        'What no check here speaks for stands at the end.',
      ],
    },
    tableCell('checks', kindTable(all)),
    ...(failed.length > 0
      ? [proseCell('failed', '## What failed', failed.map(({ name, file }) => `- ${plain(name)} (\`${file}\`)`).join('\n'))]
      : []),
    ...all.flatMap(kindCells),
    proseCell('not-checked', '## What is not checked', NOT_CHECKED.map((line) => `- ${line}`).join('\n')),
  ]
}

/** What a kind of check shows; folded under it each check with its source and result. */
function kindCells({ evidence, checks }: Judged): Cell[] {
  const { id, title, shows, places } = evidence
  const sources = sourcesOf(evidence)
  const head = proseCell(`about-${id}`, `## ${title}`, shows, `Where: ${places.map((place) => `\`${place}\``).join(', ')}.`)
  if (checks.length === 0 && sources.length === 0) return [head]
  const count = `${checks.length} check${checks.length === 1 ? '' : 's'}`
  const folded = sources.length === 0 ? count : `${count} and ${sources.length} sources`
  return [
    { ...head, folded },
    ...(checks.length === 0 ? [] : [tableCell(`checks-${id}`, checkTable(title, checks, sources))]),
    ...(sources.length === 0
      ? []
      : [proseCell(`sources-${id}`, `### Sources`, sources.map((source, index) => `${index + 1}. ${plain(source)}`).join('\n'))]),
  ]
}

/** Text of others as prose that means nothing but itself. */
const plain = (text: string): string => text.replaceAll(/[\\`*_[\]<>&#|~]/g, String.raw`\$&`)

function kindTable(all: readonly Judged[]): Table {
  const count = ({ checks }: Judged, wanted: Check['result']): number => withResult(checks, wanted).length
  return tableOf<Judged>({
    caption: 'Kinds of checks, and how they went',
    columns: [
      wordColumn('Check', 'check', 'kind of check', ({ evidence }) => evidence.title),
      {
        head: 'Passed',
        text: (each) => `${count(each, 'passed')}`,
        data: [['passed', 'tests that passed', (each) => count(each, 'passed')]],
      },
      {
        head: 'Failed',
        text: (each) => `${count(each, 'failed')}`,
        data: [['failed', 'tests that failed', (each) => count(each, 'failed')]],
      },
      {
        head: 'Sources',
        text: ({ evidence }) => `${sourcesOf(evidence).length}`,
        data: [['sources', 'sources from outside the project', ({ evidence }) => sourcesOf(evidence).length]],
      },
      wordColumn('Result', 'result', 'all passed, failed or not run', result),
    ],
    rows: all,
    marked: ({ checks }) => withResult(checks, 'failed').length > 0,
    note: 'Sources: works and data from outside the project that values were taken from; where none is named, the check stands on reasoning alone.',
  })
}

function checkTable(title: string, checks: readonly Check[], sources: readonly string[]): Table {
  const numbers = (check: Check): string => check.sources.map((source) => sources.indexOf(source) + 1).join(', ')
  return tableOf<Check>({
    caption: `${title}: each check`,
    columns: [
      wordColumn('Check', 'check', 'name of the test', ({ name }) => name),
      ...(sources.length === 0
        ? []
        : [
            wordColumn<Check>('Source', 'source', 'its sources, by their numbers below', (check) =>
              check.sources.length === 0 ? '–' : numbers(check),
            ),
          ]),
      wordColumn('Result', 'result', 'passed, failed or not run', (check) => check.result),
    ],
    rows: checks,
    marked: (check) => check.result === 'failed',
    note: `In ${[...new Set(checks.map(({ file }) => file))].join(', ')}.`,
  })
}
