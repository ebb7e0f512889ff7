import type { Drawing, Figure } from '@loopwright/charts'
import { drawingSvg, type Look } from '@loopwright/charts/draw'
import { describe, expect, test } from 'vitest'
import { textWidth } from '../../../packages/charts/src/drawing/textWidth.ts'
import { breakEvenExample } from '../../../packages/charts/src/examples/breakEven.ts'
import {
  countedWeeksExample,
  criteriaCasesExample,
  criteriaWinsExample,
  rampUpExample,
  timeLossesExample,
  trialLooksExample,
  workDeviationsExample,
} from '../../../packages/charts/src/examples/decision.ts'
import { costGrowthExample } from '../../../packages/charts/src/examples/costGrowth.ts'
import { differencesExample } from '../../../packages/charts/src/examples/differences.ts'
import { driversExample } from '../../../packages/charts/src/examples/drivers.ts'
import { gridCurvesExample } from '../../../packages/charts/src/examples/gridCurves.ts'
import { gridTableBlocksExample, gridTableExample } from '../../../packages/charts/src/examples/gridTable.ts'
import { lossesExample } from '../../../packages/charts/src/examples/losses.ts'
import { quantilePlotExample, runChartExample, timesSpreadExample } from '../../../packages/charts/src/examples/measured.ts'
import { outputByHourExample } from '../../../packages/charts/src/examples/outputByHour.ts'
import { mapExample, planExample, planNarrowExample, planRingExample } from '../../../packages/charts/src/examples/plan.ts'
import { stationLoadsExample } from '../../../packages/charts/src/examples/stationLoads.ts'
import { stationTimesExample } from '../../../packages/charts/src/examples/stationTimes.ts'
import { stoppedTimeExample } from '../../../packages/charts/src/examples/stoppedTime.ts'
import { throughputExample } from '../../../packages/charts/src/examples/throughput.ts'
import { throughputStillExample } from '../../../packages/charts/src/examples/throughputStill.ts'
import { timelineExample } from '../../../packages/charts/src/examples/timeline.ts'
import { unitsSpreadExample } from '../../../packages/charts/src/examples/unitsSpread.ts'
import { waitingCircleExample } from '../../../packages/charts/src/examples/waitingCircle.ts'
import { warmUpExample } from '../../../packages/charts/src/examples/warmUp.ts'
import { zoneOccupancyExample } from '../../../packages/charts/src/examples/zoneOccupancy.ts'
import { collisions, measured, png, sizeOf, textsIn } from './draw.ts'

const EXAMPLES: Readonly<Record<string, () => Figure>> = {
  breakEven: breakEvenExample,
  costGrowth: costGrowthExample,
  countedWeeks: countedWeeksExample,
  criteriaCases: criteriaCasesExample,
  criteriaWins: criteriaWinsExample,
  differences: differencesExample,
  drivers: driversExample,
  gridCurves: gridCurvesExample,
  gridTable: gridTableExample,
  gridTableBlocks: gridTableBlocksExample,
  losses: lossesExample,
  outputByHour: outputByHourExample,
  quantilePlot: quantilePlotExample,
  rampUp: rampUpExample,
  runChart: runChartExample,
  stationLoads: stationLoadsExample,
  stationTimes: stationTimesExample,
  stoppedTime: stoppedTimeExample,
  timeLosses: timeLossesExample,
  timesSpread: timesSpreadExample,
  throughput: throughputExample,
  throughputStill: throughputStillExample,
  timeline: timelineExample,
  trialLooks: trialLooksExample,
  unitsSpread: unitsSpreadExample,
  warmUp: warmUpExample,
  waitingCircle: waitingCircleExample,
  workDeviations: workDeviationsExample,
  zoneOccupancy: zoneOccupancyExample,
}
const LOOKS: readonly Look[] = ['page', 'light', 'dark', 'print']
const WIDTHS = [720, 480, 328]

describe.each(Object.entries(EXAMPLES))('%s', (name, example) => {
  const figure = example()

  test.each([720, 328])('its picture is the golden one, %d pixels wide', async (widthPixels) => {
    const svg = drawingSvg(figure.drawing, { widthPixels, look: 'light' })
    await expect(`${svg.replaceAll('<g', '\n<g').replaceAll('><', '>\n<')}\n`).toMatchFileSnapshot(`./${name}${widthPixels < 400 ? 'Narrow' : ''}.svg`)
  })
  test('what it says is the golden text', async () => {
    const { finding, alt, readLine, table } = figure
    const rows = table.rows.map(({ cells, marked }) => `${marked ? '>' : ' '} ${cells.join(' | ')}`)
    const text = [finding, alt, readLine, table.caption, `  ${table.columns.map(({ head }) => head).join(' | ')}`, ...rows, table.note ?? '']
    await expect(`${text.join('\n')}\n`).toMatchFileSnapshot(`./${name}.txt`)
  })
  test('it names no colour and no font, and can be written as JSON', () => {
    const written = JSON.stringify(figure.drawing)
    expect(written.match(/#[0-9a-f]{6}|"(font|fill|stroke)":/)).toBeNull()
    expect(JSON.parse(written)).toEqual(figure.drawing)
  })
  test.each(LOOKS)('it can be drawn in the look %s', (look) => {
    const svg = drawingSvg(figure.drawing, { widthPixels: 360, look })
    expect(svg).toMatch(/^<svg/)
    expect(svg).not.toMatch(/NaN|undefined|null|Infinity/)
    expect(svg.includes('var(--lw-ink)')).toBe(look === 'page')
  })
  test.each(WIDTHS)('no two texts lie on each other, and all lie inside, %d pixels wide', (widthPixels) => {
    const svg = drawingSvg(figure.drawing, { widthPixels, look: 'light' })
    const texts = textsIn(svg)
    const [wide, high] = sizeOf(svg)
    expect(wide).toBe(widthPixels)
    expect(texts.length).toBeGreaterThan(8)
    expect(collisions(texts)).toEqual([])
    expect(texts.filter(({ left, right, top, bottom }) => left < -1 || right > wide + 1 || top < -1 || bottom > high + 1)).toEqual([])
  })
  test('every row of the table has a text for every column', () => {
    for (const { cells } of figure.table.rows) expect(cells.length).toBe(figure.table.columns.length)
    expect(figure.table.columns.filter(({ pageOnly }) => !pageOnly).length).toBeLessThanOrEqual(8)
  })
})

describe('the plan', () => {
  test.each([
    ['plan', planExample],
    ['planNarrow', planNarrowExample],
    ['planRing', planRingExample],
    ['map', () => mapExample()],
    ['mapNarrow', () => mapExample(328)],
  ])('%s is the golden one', async (name, example) => {
    await expect(`${example().svg}\n`).toMatchFileSnapshot(`./${name}.svg`)
  })
  test('it can be drawn by itself, its text too', () => {
    const { svg } = planExample()
    expect(png(svg).length).toBeGreaterThan(1.3 * png(svg, false).length)
  })
})

describe('the checks see what they are for', () => {
  const two = (dx: number): Drawing => ({
    heightPixels: 100,
    across: { from: 0, to: 100, title: '', ticks: [] },
    up: { from: 0, to: 1, title: '', ticks: [] },
    marks: ['first', 'second'].map((text, index) => ({ mark: 'words', x: 50, y: 0.5, dx: dx * index, text, ink: 'words' })),
  })
  const textsOf = (drawing: Drawing) => textsIn(drawingSvg(drawing, { widthPixels: 360, look: 'light' }))
  test('texts on each other', () => {
    expect(collisions(textsOf(two(10)))).toEqual(['"first" and "second"'])
    expect(collisions(textsOf(two(100)))).toEqual([])
  })
  test.each([false, true])('texts are about as wide as they are taken to be, bold %s', (bold) => {
    for (const text of ['Tightness test', 'S6', '1 234.5', '− 40 ± 3', 'eight of ten shifts'])
      expect(textWidth(text, 13, bold) / measured(text, 13, bold)).toSatisfy((ratio: number) => ratio > 0.97 && ratio < 1.15)
  })
  test('text that was not drawn', () => {
    const svg = drawingSvg(throughputExample().drawing, { widthPixels: 720, look: 'light' })
    expect(png(svg).length).toBeGreaterThan(1.3 * png(svg, false).length)
  })
})
