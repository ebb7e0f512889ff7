import { expect, test } from 'vitest'
import { pageStyle } from './style.ts'

const style = pageStyle()

test('asks nobody for anything', () => {
  expect(style).not.toMatch(/url\((?!#)|@import|https?:/)
})

test('every colour is a variable of the look, declared for light, dark and print', () => {
  const used = new Set([...style.matchAll(/var\((--lw-[\w-]+)/g)].map((found) => found[1]!))
  for (const name of used) expect(style.split(`${name}:`).length - 1, name).toBeGreaterThanOrEqual(3)
  expect(used.size).toBeGreaterThan(3)
})

test('knows dark, print, narrow screens and readers who want no motion', () => {
  for (const query of ['prefers-color-scheme: dark', '@media print', 'max-width: 639px', 'prefers-reduced-motion'])
    expect(style).toContain(query)
  expect(style).toContain('counter(page)')
})
