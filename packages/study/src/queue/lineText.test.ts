import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { lineText, readLineText } from './lineText.ts'

test('a line comes back as it was, with numbers that JSON lacks', () => {
  const spec = stationLoop()
  expect(readLineText(lineText(spec))).toEqual(spec)
  const odd = {
    ...spec,
    staggerSeconds: Number.POSITIVE_INFINITY,
    reactionSeconds: -0,
    window: { ...spec.window, warmupSeconds: 0.1 + 0.2 },
  }
  const back = readLineText(lineText(odd))
  expect(back).toEqual(odd)
  expect(Object.is(back.reactionSeconds, -0)).toBe(true)
})

test('is the same text for the same line', () => {
  expect(lineText(stationLoop())).toBe(lineText(stationLoop()))
})
