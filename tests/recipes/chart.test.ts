/** The recipe "Add a chart": each chart has its example, its golden, its public name and its row. */
import { readFileSync } from 'node:fs'
import { join, posix } from 'node:path'
import * as charts from '@loopwright/charts'
import * as decision from '@loopwright/charts/decision'
import * as measured from '@loopwright/charts/measured'
import ts from 'typescript'
import { expect, test } from 'vitest'
import { importsOf } from '../tidy/imports.ts'
import { filesUnder, isTest, parse, TOP } from '../tidy/sources.ts'

const sources = filesUnder('packages/charts/src', /\.ts$/).filter(({ file }) => !isTest(file))
const examples = sources.filter(({ file }) => file.includes('/examples/'))
/** Functions that give a figure, each with its file. */
const made = sources
  .filter((source) => !examples.includes(source))
  .flatMap((source) =>
    parse(source).statements.flatMap((statement) =>
      ts.isFunctionDeclaration(statement) &&
      statement.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) &&
      /^Figure\b/.test(statement.type?.getText() ?? '')
        ? [{ file: source.file, name: statement.name!.text }]
        : [],
    ),
  )

const takenBy = (file: string, source: (typeof sources)[number]): boolean =>
  importsOf(source).some(({ from }) => posix.join(posix.dirname(source.file), from) === file)

test('there are charts, found by what they give', () => {
  expect(made.map(({ name }) => name)).toEqual(expect.arrayContaining(['throughput', 'losses', 'gridTable', 'timeline', 'waitingCircle']))
  expect(made.length).toBeGreaterThan(10)
})

test('each has an example, which is a golden', () => {
  const golden = filesUnder('tests/golden/charts', /charts\.test\.ts$/)[0]!
  const lacking = made.filter(({ file }) => !examples.some((example) => takenBy(file, example) && takenBy(example.file, golden)))
  expect(lacking).toEqual([])
})

test('each has a public name and a row on the page of charts', () => {
  const page = readFileSync(join(TOP, 'packages/charts/README.md'), 'utf8')
  expect(made.filter(({ name }) => !(name in charts || name in decision || name in measured))).toEqual([])
  expect(made.filter(({ name }) => !new RegExp(`^\\|[^|]*\`${name}\``, 'm').test(page))).toEqual([])
})
