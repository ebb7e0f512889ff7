import type { LossResult } from '@loopwright/study'
import { expect, test } from 'vitest'
import { lossSentences, lossSure, lossTable } from './lossWords.ts'

const mean = (of: number) => ({ n: 60, mean: of, sd: 4, level: 0.95, halfWidth: 1, low: of - 1, high: of + 1, status: 'ok' }) as const
const shown = (of: number) =>
  ({ n: 60, mean: of, sd: 4, level: 0.95, halfWidth: 1, low: of - 1, high: of + 1, pairingGain: 2, status: 'difference shown' }) as const
const none = { ...shown(0), sd: 0, halfWidth: 0, low: 0, high: 0, pairingGain: null, status: 'identical in every replication' } as const
const result: LossResult = {
  kind: 'losses',
  engineVersion: '0',
  seed: '1',
  replications: 60,
  partial: false,
  carriers: 12,
  bestCarriers: 12,
  forecast: mean(330),
  ideal: mean(360),
  gap: shown(30),
  causes: [
    { kind: 'stop', name: 'testFault', step: shown(12), alone: shown(12) },
    { kind: 'breaks', name: 'breaks', step: shown(18), alone: shown(14) },
    { kind: 'carriers', name: 'shortage of carriers', step: none, alone: none },
  ],
  interaction: shown(4),
}

test('forecast, ideal and the largest single loss', () => {
  expect(lossSentences(result, 'shift').join(' ')).toBe(
    'This line makes 330 ± 1 units a shift; without any of the 3 causes below it would make 360 ± 1, 30 ± 1 more. The largest single loss is breaks: alone it takes 14.0 ± 1.0 units a shift.',
  )
})

test('the interaction is told apart, in words', () => {
  expect(lossSure(result, 'shift')[0]).toContain('Together the causes cost 4.0 ± 1.0 units a shift more than the sum')
  expect(lossSure({ ...result, interaction: none }, 'shift')[0]).toContain('about as much as together')
  expect(lossSure({ ...result, bestCarriers: 14 }, 'shift').join(' ')).toContain('with 14 carriers none are short')
})

test('the column of what is left runs from the forecast to the ideal', () => {
  expect(lossTable(result, 'shift').rows.map(({ cells }) => cells[3])).toEqual(['330.0', '342.0', '360.0', '360.0', '', '360.0'])
})
