import { expect, test } from 'vitest'
import { bandLayers, meanLayers, type ThroughputMarks } from './throughputLayers.ts'

const marks: ThroughputMarks = { first: 5, last: 17, counts: 13, span: [200, 360], chosen: 10, plan: 320, per: 'shift', still: [] }
const text = (layers: unknown) => JSON.stringify(layers)

test('the axis shows whole carriers, half a step free at both ends', () => {
  expect(text(bandLayers(marks))).toContain('"domain":[4.5,17.5]')
  expect(text(bandLayers(marks))).toContain('"title":"Units per shift"')
})

test('plan and chosen count are drawn where there are any', () => {
  expect(text(meanLayers(marks))).toContain('["plan","320"]')
  expect(text(meanLayers(marks))).toContain('10 carriers')
  const bare = text(meanLayers({ ...marks, plan: null, chosen: null }))
  expect(bare).not.toContain('plan')
  expect(bare).not.toContain('chosenDot')
})

test('one count has no steps', () => {
  expect(text(meanLayers(marks))).toContain('"interpolate":"step"')
  expect(text(meanLayers({ ...marks, counts: 1 }))).not.toContain('"interpolate":"step"')
})

test('the word at the chosen count stands on the side with more room', () => {
  const align = (chosen: number) => /"style":"chosenText","align":"(\w+)"/.exec(text(meanLayers({ ...marks, chosen })))![1]
  expect([align(5), align(17)]).toEqual(['left', 'right'])
})
