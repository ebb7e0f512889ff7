import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { parseWrong, type WrongCase, writeWrong } from '../../../../tests/helpers/wrongCases.ts'
import { readScenario } from '../read.ts'
import { applyVariation } from '../changes/variations.ts'
import { formatProblems } from './formatProblems.ts'
import type { Problem } from './problems.ts'

const FOLDER = new URL('../../../../tests/golden/scenario/wrong/', import.meta.url)
const documents = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.md'))
  .map((name) => ({ name, text: readFileSync(new URL(name, FOLDER), 'utf8') }))
const cases = documents.flatMap(({ text }) => parseWrong(text).cases)

const TIMES_CSV = 'place;fit\n30,5;38\nstuck;41\n29,8;40,5\n'
const STUDY_CSV = 'Station,time\nImpeller,40\nImpeller,42\nHousing,60\nHousing,\nHousing,63\n'
const files = (name: string): string | null => ({ 'times.csv': TIMES_CSV, 'study.csv': STUDY_CSV })[name] ?? null

interface Wrong {
  readonly text: string
  readonly problems: readonly Problem[]
}

const read = ({ name, text }: Pick<WrongCase, 'name' | 'text'>): Wrong => ({
  text,
  problems: readScenario(text, name === 'file-no-files' ? {} : { files }).problems,
})

/** What no document holds: texts that are too large, and a call with a wrong name. */
const OTHERS: Readonly<Record<string, () => Wrong>> = {
  'too-large': () => read({ name: 'too-large', text: `format: 1\n${'# filler\n'.repeat(1_200_000)}` }),
  'too-many-parts': () => read({ name: 'too-many-parts', text: `format: 1\nname: [${'1,'.repeat(100_000)}]\n` }),
  // of so many findings only the last is told here
  'too-many-findings': () => {
    const { text, problems } = read({
      name: 'too-many-findings',
      text: `format: 1\n${Array.from({ length: 300 }, (_, i) => `key${i}: 1\n`).join('')}`,
    })
    return { text, problems: problems.slice(-1) }
  },
  'unknown-variation': () => {
    const text = 'format: 1\nvariations:\n  train: { drive.release: train }\n'
    return { text, problems: applyVariation(text, 'trian').problems }
  },
}

const wrongs = new Map<string, Wrong>([
  ...cases.map((one) => [one.name, read(one)] as const),
  ...Object.entries(OTHERS).map(([name, wrong]) => [name, wrong()] as const),
])

function told(name: string): string {
  const { text, problems } = wrongs.get(name)!
  return `${formatProblems(problems, text, `${name}.yaml`)}\n`
}

describe('wrong scenarios', () => {
  test('there are many of them, each with a name of its own', () => {
    expect(cases.length).toBeGreaterThanOrEqual(200)
    expect(wrongs.size).toBe(cases.length + Object.keys(OTHERS).length)
    expect([...wrongs].filter(([, { problems }]) => problems.length === 0)).toEqual([])
  })

  test.each(documents)('$name: each case has its whole message', async ({ name, text }) => {
    const document = parseWrong(text)
    const messages = document.cases.map((one) => told(one.name))
    await expect(writeWrong(document, messages)).toMatchFileSnapshot(`../../../../tests/golden/scenario/wrong/${name}`)
  })

  test('texts too large, and a variation that is not there', () => {
    expect(Object.keys(OTHERS).map(told).join('\n')).toMatchInlineSnapshot(`
      "too-large.yaml:1:1  E_TOO_LARGE
        the file has 10800010 characters
            1 | format: 1
              | ^
        a scenario has at most 1000000; put long lists of times into a CSV file
      1 problem found; nothing was run.

      too-many-parts.yaml:1:1  E_TOO_MANY_PARTS
        the file has more parts than can be read in reasonable time
            1 | format: 1
              | ^
        keep it below about 50000 values; put long lists of times into a CSV file
      1 problem found; nothing was run.

      too-many-findings.yaml:198:1  E_TOO_MANY_FINDINGS  key196
        there are more than 200 problems; the rest is not shown
          198 | key196: 1
              | ^^^^^^
        mend the first ones and check again
      1 problem found; nothing was run.

      unknown-variation.yaml:3:3  E_UNKNOWN_VARIATION  variations
        there is no variation called "trian"
            3 |   train: { drive.release: train }
              |   ^
        did you mean "train"?
      1 problem found; nothing was run.
      "
    `)
  })
})

test('every sentence, those about any line too, occurs in one of these cases, each under a code of its own', () => {
  const texts = ['./messages.ts', '../../../line/src/check/sentences.ts'].map((name) =>
    readFileSync(new URL(name, import.meta.url), 'utf8'),
  )
  const functions = texts.flatMap((text) => text.split(/\n(?:export const | {2})(?=\w+(?: = |: )\([^)]*\): Sentence =>)/).slice(1))
  const codes = functions.map((body) => /(?:error|warning)\(\s*'([EW]_[A-Z_0-9]+)'/.exec(body)?.[1] ?? body.slice(0, 40))
  expect(codes.length).toBeGreaterThan(100)
  expect(new Set(codes).size).toBe(codes.length)
  const shown = new Set([...wrongs.values()].flatMap(({ problems }) => problems.map((problem) => problem.code)))
  expect(codes.filter((code) => !shown.has(code))).toEqual([])
  expect([...shown].filter((code) => !codes.includes(code))).toEqual([])
})
