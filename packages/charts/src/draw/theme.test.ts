import { expect, test } from 'vitest'
import { DARK, LIGHT, PRINT } from './palette.ts'
import { palette, themeCss, vegaConfig } from './theme.ts'

const css = themeCss()

test('every variable that the look `page` uses is declared for light, dark and print', () => {
  const used = [...JSON.stringify(palette('page')).matchAll(/var\((--lw-[\w-]+)\)/g)].map((found) => found[1]!)
  expect(used.length).toBe(7 + 10 + 10 + 9 + 9 + 7)
  const blocks = css.split('\n').filter((line) => line.includes(':root{'))
  expect(blocks.length).toBe(3)
  for (const block of blocks) for (const name of used) expect(block).toContain(`${name}:`)
})

test('each block declares the colours of its look', () => {
  const [light, dark, print] = css.split('\n') as [string, string, string]
  expect(light).toContain(`--lw-accent:${LIGHT.accent}`)
  expect(dark).toContain(`--lw-state-0:${DARK.states[0]}`)
  expect(dark).toContain(`--lw-on-ramp-4:${DARK.onRamp[4]}`)
  expect(print).toContain(`--lw-state-9:${PRINT.states[9]}`)
  expect(print).toContain('--lw-plate:#ffffff')
})

test('the configuration of a look holds no colour of another', () => {
  expect(JSON.stringify(vegaConfig('page'))).not.toMatch(/#[0-9a-f]{6}/)
  expect(JSON.stringify(vegaConfig('dark'))).not.toContain(LIGHT.ink)
  expect(JSON.stringify(vegaConfig('light'))).not.toContain(DARK.ink)
  expect(JSON.stringify(vegaConfig('print'))).toContain('url(#lw-hatch-3)')
})

test('thousands are parted by a thin space in charts too', () => {
  expect(vegaConfig('light').locale).toMatchObject({ number: { thousands: '\u202f', decimal: '.' } })
})
