import { readFileSync } from 'node:fs'
import { formatProblems, readScenario, readScenarioWith } from '@loopwright/scenario'
import { compareLines } from '@loopwright/study/compare'
import { describe, expect, test } from 'vitest'
import { liveCell } from './liveCell.ts'
import { liveSession, STAGES } from './liveSession.ts'
import type { LiveSetting, LiveTold, ToldSetting } from './liveTold.ts'
import { SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'

const open = readFileSync(new URL('../../../../scenarios/test-and-repair-line.yaml', import.meta.url), 'utf8')
const dataOf = (text: string, seed = 'live') => ({ ...liveCell({ scenarioFile: 'a line.yaml', scenarioText: text })!, seed, curve: null })
/** All that is told of settings, up to so many replications. */
async function asked(text: string, settings: readonly LiveSetting[], upTo = 10): Promise<LiveTold[]> {
  const told: LiveTold[] = []
  const stop = new AbortController()
  const session = liveSession(dataOf(text))
  await session.ask(
    { id: 3, settings },
    (each) => {
      told.push(each)
      if (each.kind === 'told' && each.replications >= upTo) stop.abort()
    },
    stop.signal,
  )
  return told
}

describe('a setting beside the file', () => {
  test('is told again and again, with the numbers of a comparison of as many replications', async () => {
    const values = { carriers: '5', 'A.time': '50 s' }
    const told = (await asked(SMALL_LINE, [{ name: 'what if', values }], 20)) as ToldSetting[]
    expect(told.map(({ replications }) => replications)).toEqual(STAGES.slice(0, 3))
    const { scenario } = readScenario(SMALL_LINE)
    const changed = liveSession(dataOf(SMALL_LINE)).read(values)
    expect(changed.scenario!.line.carriers.count).toBe(5)
    for (const { replications, lines } of told) {
      const same = await compareLines(
        [scenario!, changed.scenario!].map(({ line, name, plan }) => ({ name, line, plan: plan?.unitsPerWindow ?? null })),
        { replications },
        { seed: 'live', workers: 0 },
      )
      expect(lines.map(({ units }) => units)).toEqual(same.lines.map(({ units }) => units))
    }
  })

  test('figures stand beside those of the file, words say what was changed, the command is one that can be typed', async () => {
    const [told] = (await asked(SMALL_LINE, [{ name: 'what if', values: { carriers: '1' } }], 5)) as ToldSetting[]
    expect(told!.changes).toEqual([['Carriers: 4 → 1']])
    expect(told!.figures[0]).toMatchObject({
      label: 'Units a shift',
      was: expect.stringMatching(/^\d+$/),
      more: expect.stringMatching(/^[+−]/),
    })
    expect(told!.command).toBe("loopwright compare 'a line.yaml' --set 'what if: carriers.count=1' --replications 5 --seed live")
    expect(told!.sentences.at(-1)).toContain('“what if”')
    expect(told!.last).toBe(false)
  })

  test('two settings stand beside each other as well, over the same shifts', async () => {
    const [told] = (await asked(
      SMALL_LINE,
      [
        { name: 'A', values: { carriers: '1' } },
        { name: 'B', values: { carriers: '5' } },
      ],
      5,
    )) as ToldSetting[]
    expect(told!.lines.map(({ name }) => name)).toEqual(['Small loop', 'A', 'B'])
    expect(told!.sentences.some((sentence) => sentence.includes('“B” makes') && sentence.includes('than “A”'))).toBe(true)
  })
})

describe('what cannot be simulated', () => {
  test('is told as the command tells it, and names its field', async () => {
    const [told] = await asked(open, [{ name: 'what if', values: { carriers: '0' } }])
    const { problems } = readScenarioWith(open, { 'carriers.count': '0' }, { changePrefix: '--set ' })
    expect(told).toEqual({
      kind: 'refused',
      id: 3,
      key: 'carriers',
      text: formatProblems(
        problems.filter(({ severity }) => severity === 'error'),
        open,
        'a line.yaml',
      ),
    })
  })

  test('a text that is no time is refused before the file is read', async () => {
    expect(await asked(SMALL_LINE, [{ name: 'what if', values: { 'A.time': 'long' } }])).toMatchObject([{ kind: 'refused', key: 'A.time' }])
  })
})

test('a value that would keep the reader waiting for minutes is refused in words, and neither watched nor kept', async () => {
  const often = { '=stops': '{ jam: { at: B, after: exponential 0.01 ms, lasts: exponential 0.01 ms } }' }
  const told = await asked(SMALL_LINE, [{ name: 'what if', values: often }])
  expect(told).toEqual([
    {
      kind: 'refused',
      id: 3,
      key: null,
      text: expect.stringMatching(/^One run of this asks for about [\d.]+·10\S+ events, [\d.]+ (?:s|minutes) of a core/),
    },
  ])
  const session = liveSession(dataOf(SMALL_LINE))
  expect(await session.watch(often, 0, new AbortController().signal)).toMatchObject({ scenario: null })
  expect(session.keep({ name: 'what if', values: often }, 10)).toBeNull()
})

test('so is the line as it is written', async () => {
  const text = SMALL_LINE.replace('exponential 60 min, lasts: exponential 2 min', 'exponential 0.01 ms, lasts: exponential 0.01 ms')
  const session = liveSession(dataOf(text))
  const refused = { scenario: null, key: null, text: expect.stringContaining('One run of this asks for about ') }
  expect(session.read({})).toEqual(refused)
  expect(await session.watch({}, 0, new AbortController().signal)).toEqual(refused)
  expect(await asked(text, [{ name: 'what if', values: { carriers: '3' } }])).toMatchObject([{ kind: 'refused', text: refused.text }])
})

test('a path that is no path is refused, and nothing else is changed by it', async () => {
  const told = await asked(SMALL_LINE, [{ name: 'what if', values: { '=__proto__': '5' } }])
  expect(told).toMatchObject([{ kind: 'refused', text: expect.stringContaining('"__proto__" cannot be used') }])
  expect(Object.getPrototypeOf({})).toBe(Object.prototype)
})

test('a standstill is told with its reason, as a run of the command tells it', async () => {
  const [told] = (await asked(open, [{ name: 'what if', values: { carriers: '5' } }], 5)) as ToldSetting[]
  const text = told!.warnings.map((warning) => `${warning.title} ${warning.text}`).join('\n')
  expect(text).toContain('Gridlock: the open line stands still')
  expect(text).toContain('GRIDLOCK after')
  expect(told!.figures[0]!.value).toBe('stands still')
})

test('what is kept reads back to the same line, from the variation and from the file', () => {
  const session = liveSession(dataOf(SMALL_LINE))
  const setting = { name: 'more and quicker', values: { carriers: '5', 'A.time': '50 s' } }
  expect(session.keep({ ...setting, name: 'x', values: { carriers: 'many' } }, 20)).toBeNull()
  const kept = session.keep(setting, 20)!
  expect(kept.fileName).toBe('a line-more-and-quicker.yaml')
  expect(kept.words).toEqual(['Carriers: 4 → 5', expect.stringMatching(/ → 50 s$/)])
  expect(kept.yaml).toMatch(/^variations:\n {2}more and quicker:\n/)
  expect(readScenario(kept.file).problems.filter(({ severity }) => severity === 'error')).toEqual([])
})
