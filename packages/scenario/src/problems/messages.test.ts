import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { formatProblems } from './formatProblems.ts'
import type { Problem } from './problems.ts'
import { readScenario } from '../read.ts'
import { applyVariation } from '../changes/variations.ts'

const FOLDER = new URL('../../../../tests/golden/scenario/wrong/', import.meta.url)
const TIMES_CSV = 'place;fit\n30,5;38\nstuck;41\n29,8;40,5\n'
const names = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => name.slice(0, -5))
  .sort()

const STUDY_CSV = 'Station,time\nImpeller,40\nImpeller,42\nHousing,60\nHousing,\nHousing,63\n'
const files = (name: string): string | null => ({ 'times.csv': TIMES_CSV, 'study.csv': STUDY_CSV })[name] ?? null

/** Texts that are too large to keep. */
const MADE: Record<string, () => string> = {
  'too-large': () => `format: 1\n${'# filler\n'.repeat(1_200_000)}`,
  'too-many-parts': () => `format: 1\nname: [${'1,'.repeat(100_000)}]\n`,
}

/** Not files of their own: made texts, and a call with a wrong name. Of too many findings only the last is kept. */
const OTHERS = [...Object.keys(MADE), 'unknown-variation', 'too-many-findings']

function read(name: string): { text: string; problems: readonly Problem[] } {
  if (name === 'unknown-variation') {
    const text = 'format: 1\nvariations:\n  train: { drive.release: train }\n'
    return { text, problems: applyVariation(text, 'trian').problems }
  }
  if (name === 'too-many-findings') {
    const text = `format: 1\n${Array.from({ length: 300 }, (_, i) => `key${i}: 1\n`).join('')}`
    return { text, problems: readScenario(text, '').problems.slice(-1) }
  }
  const text = MADE[name]?.() ?? readFileSync(new URL(`${name}.yaml`, FOLDER), 'utf8')
  return { text, problems: readScenario(text, `${name}.yaml`, name === 'file-no-files' ? {} : { files }).problems }
}

describe('wrong scenario files', () => {
  test('there are many of them', () => {
    expect(names.length).toBeGreaterThanOrEqual(60)
  })

  test.each([...names, ...OTHERS])('%s', async (name) => {
    const { text, problems } = read(name)
    expect(problems.length).toBeGreaterThan(0)
    await expect(`${formatProblems(problems, text, `${name}.yaml`)}\n`).toMatchFileSnapshot(
      `../../../../tests/golden/scenario/wrong/${name}.txt`,
    )
  })
})

test('every sentence of messages.ts occurs in one of these files, each under a code of its own', () => {
  const source = readFileSync(new URL('messages.ts', import.meta.url), 'utf8')
  const functions = source.split(/\nexport const /).slice(1)
  const codes = functions.map((body) => /(?:error|warning)\(\s*'([EW]_[A-Z_0-9]+)'/.exec(body)?.[1] ?? body.slice(0, 40))
  expect(codes.length).toBeGreaterThan(100)
  expect(new Set(codes).size).toBe(codes.length)
  const shown = new Set([...names, ...OTHERS].flatMap((name) => read(name).problems.map((problem) => problem.code)))
  expect(codes.filter((code) => !shown.has(code))).toEqual([])
  expect([...shown].filter((code) => !codes.includes(code))).toEqual([])
})
