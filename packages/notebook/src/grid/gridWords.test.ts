import { binomialEstimate, chanceVerdict, outputInterval, quantileEstimate } from '@loopwright/stats'
import { pairedDifference } from '@loopwright/stats/worlds'
import { factorialEffects } from '@loopwright/stats/procedures'
import { factorial, type GridResult } from '@loopwright/study/compare'
import { expect, test } from 'vitest'
import { gridSentences, gridSure } from './gridWords.ts'

const SHIFT = { one: 'shift', each: 'a shift', many: 'shifts', plan: 320, line: 'loop', named: 'the late shift' } as const
const factors = [
  { name: 'carriers', levels: ['8', '9', '10'] },
  { name: 'drive.speed', levels: ['10 m/min', '15 m/min'] },
]
/** scatter of 40 worlds, the same for every setting, and a little of its own */
const WORLDS = Array.from({ length: 40 }, (_, j) => ((j * 7) % 11) - 5)

function told(means: readonly number[], { spread = 1, own = 1, plan = 320 as number | null, stuck = [] as number[] } = {}): GridResult {
  const units = means.map((mean, point) =>
    WORLDS.map((world, j) => mean + spread * world + own * spread * 2 * Math.sin((j + 1) * (point + 1) * 12.9898)),
  )
  const settings = factorial(factors)
  const base = 5
  const free = [...means.keys()].filter((point) => !stuck.includes(point))
  const best = free.reduce((most, point) => (means[point]! > means[most]! ? point : most), free[0]!)
  return {
    kind: 'grid',
    engineVersion: '0',
    seed: '1',
    replications: 40,
    partial: false,
    level: 0.95,
    window: { warmupSeconds: 0, endSeconds: 28_800 },
    factors,
    points: units.map((made, point) => ({
      levels: settings[point]!,
      carriers: Number(factors[0]!.levels[settings[point]![0]!]),
      plan,
      units: made,
      mean: outputInterval(made),
      p10: quantileEstimate(made, 0.1),
      meetsPlan: plan === null ? null : binomialEstimate(made.filter((each) => each >= plan).length, 40),
      planVerdict: plan === null ? null : chanceVerdict(made.filter((each) => each >= plan).length, 40),
      gridlocks: stuck.includes(point) ? 2 : 0,
      outOfProducts: 0,
      toBase: point === base ? null : pairedDifference(made, units[base]!, 0.99),
    })),
    base,
    outside: null,
    best,
    maybeBest: [best],
    nearBest: free.filter((point) => means[point]! >= 0.99 * means[best]!),
    effects: factorialEffects([3, 2], units),
  }
}

test('the plan comes first: which settings meet it', () => {
  const sentences = gridSentences(told([280, 310, 300, 330, 315, 335]), SHIFT)
  expect(sentences[0]).toBe(
    'The plan of 320 is met in at least nine of ten of the shifts simulated by 2 of 6 settings: 9 carriers with drive.speed 15 m/min; 10 carriers with drive.speed 15 m/min.',
  )
  expect(sentences[1]).toMatch(/^Most is made by 10 carriers with drive\.speed 15 m\/min: 335 ± 1 units a shift on average\.$/)
})

test('no setting meets the plan: the nearest, with its chance, or with its mean where none ever does', () => {
  expect(gridSentences(told([280, 310, 300, 312, 305, 317]), SHIFT)[0]).toMatch(
    /^The plan of 320 is met by no setting in nine of ten shifts\. Nearest comes 10 carriers with drive\.speed 15 m\/min: it is met in \d+ of 40 shifts \(\d+\u202f%, \d+ to \d+\)\.$/,
  )
  expect(gridSentences(told([280, 290, 281, 292, 283, 294]), SHIFT)[0]).toBe(
    'The plan of 320 is met by no setting in any of the 40 shifts simulated. Nearest comes 10 carriers with drive.speed 15 m/min: 294 ± 1 units on average.',
  )
})

test('many settings meet it: how many, and the fewest carriers for each level of the other factor', () => {
  const [first] = gridSentences(told([300, 340, 340, 340, 341, 341]), SHIFT)
  expect(first).toContain('by 5 of 6 settings. The fewest carriers for it: 8 with drive.speed 15 m/min; 9 with drive.speed 10 m/min.')
})

test('what stood still is neither best nor an answer to the plan', () => {
  const sentences = gridSentences(told([300, 310, 300, 330, 315, 345], { stuck: [5] }), SHIFT).join(' ')
  expect(sentences).toContain('by 1 of 6 settings: 9 carriers with drive.speed 15 m/min.')
  expect(sentences).toContain('Most is made by 9 carriers with drive.speed 15 m/min')
})

test('what each factor does, the strongest first, and what depends on what', () => {
  const sentences = gridSentences(told([280, 310, 300, 330, 315, 335]), SHIFT)
  expect(sentences.slice(-3)).toEqual([
    expect.stringMatching(
      /^With 10 carriers the line makes (29\.9|30\.\d) units a shift more than with 8 \(9\d(\.\d)?\u202f%: .*\), averaged over drive\.speed\.$/,
    ),
    expect.stringMatching(
      /^With drive\.speed 15 m\/min the line makes 26\.\d units a shift more than with 10 m\/min .*, averaged over the number of carriers\.$/,
    ),
    expect.stringMatching(/what more carriers bring depends on drive\.speed, by \d+/),
  ])
  // a sum of two effects, with scatter of its own: no dependence is shown
  const added = gridSentences(told([280, 300, 290, 310, 300, 320], { own: 3 }), SHIFT).at(-1)
  expect(added).toMatch(/^That what more carriers bring depends on drive\.speed is not shown: by \d+(\.\d)? units a shift at most\.$/)
})

test('without chance: numbers without intervals, and it says why', () => {
  const calm = told([280, 310, 300, 330, 315, 330], { spread: 0 })
  const sentences = gridSentences({ ...calm, maybeBest: [3, 5] }, SHIFT)
  expect(sentences[0]).toBe(
    'The plan of 320 is met by 2 of 6 settings: 9 carriers with drive.speed 15 m/min; 10 carriers with drive.speed 15 m/min.',
  )
  expect(sentences[1]).toBe(
    'Most is made by 9 carriers with drive.speed 15 m/min: 330 units a shift, and as much by 10 carriers with drive.speed 15 m/min.',
  )
  expect(sentences.join(' ')).not.toMatch(/±|%: /)
  expect(gridSure(calm, SHIFT)).toEqual(['Each setting makes the same in all 40 shifts simulated: chance does not reach these numbers.'])
})

test('how sure: the sample, what the intervals say together, what more replications narrow', () => {
  const [first, second] = gridSure(told([280, 310, 300, 330, 315, 335]), SHIFT)
  expect(first).toContain('Each of 6 settings was simulated for the same 40 shifts')
  expect(first).toContain('The differences from 10 carriers with drive.speed 15 m/min hold together in 95\u202f% of such studies')
  expect(second).toMatch(/^Independent runs would need at least [\d.]+ times as many shifts for intervals of the differences as narrow\.$/)
})

test('no plan, no word of it', () => {
  expect(gridSentences(told([280, 310, 300, 330, 315, 335], { plan: null }), { ...SHIFT, plan: null }).join(' ')).not.toContain('plan')
})
