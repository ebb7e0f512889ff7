import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { GUIDANCE_WORDS } from './finding.ts'
import { NOTHING_GIVEN, screen } from './screening.ts'

test('ids are unique, words are those of the list, counts add up, and everything says what to measure', () => {
  const result = screen(
    stationLoop(),
    {
      ...NOTHING_GIVEN,
      mass: 115,
      people: 'working',
      heights: [{ place: 'S', height: 0.95, work: 'light' }],
      gaps: [{ place: 'T', width: 0.2, part: 'hand' }],
      volts: 24,
      zone: { noseMargin: 0.05, rearMargin: 0.05 },
    },
    [{ place: 'S', perShift: 1920, netSeconds: 27_000 }],
  )
  const ids = result.findings.map(({ id }) => id)
  expect(new Set(ids).size).toBe(ids.length)
  for (const { word, measure, why, guidance, margin } of result.findings) {
    expect(GUIDANCE_WORDS).toContain(word)
    expect(measure).not.toBe('')
    expect(why === null).toBe(word !== 'not checked')
    expect(margin === null).toBe(word === 'not checked')
    if (guidance !== null) expect([guidance.source, guidance.edition, guidance.evidence].every((text) => text !== '')).toBe(true)
  }
  expect(Object.values(result.counts).reduce((sum, count) => sum + count, 0)).toBe(new Set(result.findings.map(({ what }) => what)).size)
})
