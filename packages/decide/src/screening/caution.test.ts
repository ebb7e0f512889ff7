import { expect, test } from 'vitest'
import { LOW_VOLTAGE, RISK_REDUCTION, SCREENING_CAUTION, STANDARDS_TO_OPEN } from './caution.ts'

test('the caution says what the figure is not, and who decides', () => {
  expect(SCREENING_CAUTION).toMatch(/^Screening only\./)
  expect(SCREENING_CAUTION).toContain('not a risk assessment and not a statement of compliance')
  expect(SCREENING_CAUTION).toContain('Local codes')
  expect(SCREENING_CAUTION).toContain('licensed')
})

test('the order of risk reduction is design, guards, information (ISO 12100, from memory)', () => {
  expect(RISK_REDUCTION.map((step) => step.split(/[: ]/)[0])).toEqual(['design', 'guards', 'information'])
})

test('standards are named once each, and low voltage is told both ways', () => {
  expect(new Set(STANDARDS_TO_OPEN).size).toBe(STANDARDS_TO_OPEN.length)
  expect(STANDARDS_TO_OPEN).toEqual(expect.arrayContaining(['ISO 13855', 'ISO 13854', 'EN 619']))
  expect(LOW_VOLTAGE).toMatch(/removes shock, not pinch/)
})
