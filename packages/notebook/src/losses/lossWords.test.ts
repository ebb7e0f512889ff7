import { losses } from '@loopwright/charts'
import type { LossResult } from '@loopwright/study'
import { expect, test } from 'vitest'
import { lossSentences, lossSure } from './lossWords.ts'

const mean = (of: number, halfWidth = 1) =>
  ({
    n: 60,
    mean: of,
    sd: 4,
    level: 0.95,
    halfWidth,
    low: of - halfWidth,
    high: of + halfWidth,
    status: 'ok',
    skewness: 0,
    method: 'Hall',
  }) as const
const shown = (of: number) => ({ ...mean(of), pairingGain: 2, status: 'difference shown' }) as const
const none = { ...mean(0, 0), sd: 0, pairingGain: null, status: 'identical in every replication' } as const
const breaks = { kind: 'breaks', name: 'breaks', step: shown(18), alone: shown(14) } as const
const result: LossResult = {
  kind: 'losses',
  engineVersion: '0',
  seed: '1',
  replications: 60,
  partial: false,
  carriers: 12,
  bestCarriers: 12,
  gridlocks: 0,
  outOfProducts: 0,
  forecast: mean(330),
  ideal: mean(360),
  gap: shown(30),
  causes: [
    { kind: 'stop', name: 'jam', step: shown(12), alone: shown(12) },
    breaks,
    { kind: 'carriers', name: 'shortage of carriers', step: none, alone: none },
  ],
  interaction: shown(4),
}
const words = { each: 'a shift', many: 'shifts', line: 'loop' } as const
const sure = (change: Partial<LossResult>) => lossSure({ ...result, ...change }, words)

test('what the line makes, what it would make, and the cause that costs most by itself', () => {
  const other = { ...result, causes: [breaks, { ...breaks, name: 'jam', alone: shown(9) }] }
  expect(lossSentences(other, words)).toEqual([
    'As it stands the loop makes 330 ± 1 units a shift. Without the 2 causes in the table it would make 360 ± 1, so that 30.0 ± 1.0 units a shift are lost.',
    'The costliest single cause is breaks: with that alone gone the loop would make 14.0 ± 1.0 units a shift more.',
  ])
})

test('causes whose intervals meet are not ranked, and what is not shown is not named', () => {
  expect(lossSentences(result, words)[1]).toBe(
    'The costliest single cause may be breaks: with that alone gone the loop would make 14.0 ± 1.0 units a shift more; jam (12.0 ± 1.0) cannot be told from it.',
  )
  const unsure = { ...breaks, alone: { ...shown(0.5), low: -0.5, status: 'no difference shown' } as const }
  expect(lossSentences({ ...result, causes: [unsure] }, words)[1]).toBe('No single cause is shown to cost units by itself.')
})

test('a line without chance gets its numbers without intervals', () => {
  const gap = { ...none, mean: 30, low: 30, high: 30, status: 'always differs by the same' } as const
  expect(lossSentences({ ...result, forecast: mean(330, 0), ideal: mean(360, 0), gap }, words)[0]).toBe(
    'As it stands the loop makes 330 units a shift. Without the 3 causes in the table it would make 360, so that 30 units a shift are lost.',
  )
})

test('nothing to lose by, or nothing known yet', () => {
  expect(lossSentences({ ...result, causes: [], gap: none }, words)).toEqual([
    'As it stands the loop makes 330 ± 1 units a shift. Nothing was found that it could lose units by.',
  ])
  expect(lossSentences({ ...result, forecast: null }, words)[0]).toMatch(/^No answer yet/)
  expect(sure({ forecast: null })).toEqual([])
})

test('that the causes sum to the gap, and why what each brings alone does not', () => {
  expect(sure({})[1]).toBe(
    'But for rounding, the causes sum to the 30.0 ± 1.0 units between the two totals. What each would bring if it alone were gone sums to 4.0 ± 1.0 units a shift less: as long as the others are there, one that goes brings less.',
  )
  expect(sure({ interaction: shown(-4) })[1]).toContain('sums to 4.0 ± 1.0 units a shift more: once some are gone')
  expect(sure({ interaction: none })[1]).toContain('sums to about as much.')
})

test('a plus sign is explained where one stands, and only there', () => {
  const helps = (status: 'difference shown' | 'no difference shown') => ({ ...breaks, step: { ...shown(-2), status } })
  expect(sure({}).join(' ')).not.toContain('plus sign')
  expect(sure({ causes: [helps('difference shown')] })[2]).toBe(
    'A plus sign (breaks): with it there the loop makes more than with it taken out. That may be because in a break the conveyor goes on, and stations find carriers ready after it.',
  )
  expect(sure({ causes: [helps('no difference shown')] })[2]).toContain('The interval holds 0, so that it may be chance.')
})

test('what a shortage of carriers was measured against', () => {
  expect(sure({}).at(-1)).toContain('no other number than 12 was shown to make more')
  expect(sure({ bestCarriers: 14 }).at(-1)).toContain('taken out means 14 carriers in place of 12')
  expect(sure({ causes: [breaks] }).join(' ')).not.toContain('carriers')
})

test('one unit is one unit', () => {
  const one = { ...shown(1), halfWidth: 0, low: 1, high: 1, sd: 0 } as const
  const told = [
    ...lossSentences({ ...result, gap: one }, words),
    ...sure({ gap: one, interaction: one }),
    losses({ ...result, causes: [{ ...breaks, step: one }] }).finding,
  ].join(' ')
  expect(told).toContain('so that 1 unit a shift is lost')
  expect(told).toContain('sum to the 1 unit between')
  expect(told).not.toMatch(/(?<!± )\b1 units\b/)
})

test('fewer carriers than there are is no shortage', () => {
  const causes = [{ kind: 'carriers', name: 'too many carriers', step: shown(12), alone: shown(12) }] as const
  expect(sure({ causes, carriers: 12, bestCarriers: 8 }).at(-1)).toBe(
    'Too many carriers: taken out means 8 carriers in place of 12, the best number in short runs.',
  )
})
