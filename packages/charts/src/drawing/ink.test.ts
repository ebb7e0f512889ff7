import { expect, test } from 'vitest'
import { colourOf, inkAttributes, paintOf } from './ink.ts'

test('a page colours by variables, other looks by values', () => {
  expect(colourOf('accent', 'page')).toBe('var(--lw-accent)')
  expect(colourOf('state 3', 'print')).toBe('url(#lw-hatch-3)')
  expect(colourOf('on ramp 8', 'light')).toMatch(/^#[0-9a-f]{6}$/)
  expect(() => colourOf('nothing', 'light')).toThrow('no colour is called "nothing"')
})

test('what an ink is made of', () => {
  expect(inkAttributes('plan', 'light')).toBe(' fill="none" stroke="#1b1b1f" stroke-width="1.4" stroke-dasharray="6 4"')
  expect(paintOf('state 2')).toEqual({ fill: 'state 2', stroke: 'ink', width: 0.6 })
  expect(paintOf('on state 2').fill).toBe('on state 2')
  expect(inkAttributes('strong', 'dark')).toContain('font-weight="600"')
})
