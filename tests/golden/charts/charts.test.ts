import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { type Figure, type Look, stationTimes, statesIn, zoneOccupancy } from '@loopwright/charts'
import { Ajv } from 'ajv'
import { describe, expect, test } from 'vitest'
import { baseLineCount, baseLineSweep, SHIFT } from '../../../packages/charts/src/examples/baseLine.ts'
import { costGrowthExample } from '../../../packages/charts/src/examples/costGrowth.ts'
import { driversExample } from '../../../packages/charts/src/examples/drivers.ts'
import { gridCurvesExample } from '../../../packages/charts/src/examples/gridCurves.ts'
import { gridTableBlocksExample, gridTableExample } from '../../../packages/charts/src/examples/gridTable.ts'
import { lossesExample } from '../../../packages/charts/src/examples/losses.ts'
import { outputByHourExample } from '../../../packages/charts/src/examples/outputByHour.ts'
import { mapExample, planExample, planNarrowExample, planRingExample } from '../../../packages/charts/src/examples/plan.ts'
import { stationTimesExample } from '../../../packages/charts/src/examples/stationTimes.ts'
import { stoppedTimeExample } from '../../../packages/charts/src/examples/stoppedTime.ts'
import { throughputExample } from '../../../packages/charts/src/examples/throughput.ts'
import { throughputStillExample } from '../../../packages/charts/src/examples/throughputStill.ts'
import { timelineExample } from '../../../packages/charts/src/examples/timeline.ts'
import { unitsSpreadExample } from '../../../packages/charts/src/examples/unitsSpread.ts'
import { waitingCircleExample } from '../../../packages/charts/src/examples/waitingCircle.ts'
import { zoneOccupancyExample } from '../../../packages/charts/src/examples/zoneOccupancy.ts'
import { collisions, compileWarnings, draw, png, viewOf } from './draw.ts'

const EXAMPLES: Readonly<Record<string, () => Figure>> = {
  costGrowth: costGrowthExample,
  drivers: driversExample,
  gridCurves: gridCurvesExample,
  gridTable: gridTableExample,
  gridTableBlocks: gridTableBlocksExample,
  losses: lossesExample,
  outputByHour: outputByHourExample,
  stationTimes: stationTimesExample,
  stoppedTime: stoppedTimeExample,
  throughput: throughputExample,
  throughputStill: throughputStillExample,
  timeline: timelineExample,
  unitsSpread: unitsSpreadExample,
  waitingCircle: waitingCircleExample,
  zoneOccupancy: zoneOccupancyExample,
}
const LOOKS: readonly Look[] = ['page', 'light', 'dark', 'print']
const WIDTHS = [1100, 480, 328]

const schema = JSON.parse(readFileSync(createRequire(import.meta.url).resolve('vega-lite/vega-lite-schema.json'), 'utf8')) as object
const ajv = new Ajv({ strict: false, allErrors: false, validateFormats: false })
const isVegaLite = ajv.compile(schema)

describe.each(Object.entries(EXAMPLES))('%s', (name, example) => {
  const figure = example()

  test('its spec is the golden one', async () => {
    await expect(`${JSON.stringify(figure.spec, null, 1)}\n`).toMatchFileSnapshot(`./${name}.json`)
  })
  test('what it says is the golden text', async () => {
    const { finding, alt, readLine, table } = figure
    const rows = table.rows.map(({ cells, marked }) => `${marked ? '>' : ' '} ${cells.join(' | ')}`)
    const text = [finding, alt, readLine, table.caption, `  ${table.columns.map(({ head }) => head).join(' | ')}`, ...rows, table.note ?? '']
    await expect(`${text.join('\n')}\n`).toMatchFileSnapshot(`./${name}.txt`)
  })
  test('it is a valid vega-lite spec', () => {
    expect(isVegaLite(figure.spec), JSON.stringify(isVegaLite.errors?.slice(0, 3))).toBe(true)
  })
  test('it names no colour and no font', () => {
    const named = JSON.stringify(figure.spec).match(/#[0-9a-f]{6}|"(font|fill|stroke)":"[^"]*|"color":"(?!independent)[^"]*/)
    expect(named).toBeNull()
  })
  test.each([null, ...LOOKS])('it compiles without a warning, look %s', (look) => {
    expect(compileWarnings(figure.spec, look)).toEqual([])
  })
  test.each(['page', 'dark', 'print'] as const)('it draws by interpreted expressions without a warning, look %s', async (look) => {
    const { svg, warnings } = await draw(figure.spec, look, 360)
    expect(warnings).toEqual([])
    expect(svg).toMatch(/^<svg/)
    expect(svg).not.toMatch(/NaN|undefined|null/)
  })
  test.each(WIDTHS)('no two texts lie on each other, and all lie inside, %d pixels wide', async (width) => {
    const { svg, texts } = await draw(figure.spec, 'light', width)
    const [, wide, high] = /width="([\d.]+)" height="([\d.]+)"/.exec(svg)!.map(Number) as [number, number, number]
    expect(wide).toBeLessThanOrEqual(width)
    expect(texts.length).toBeGreaterThan(8)
    expect(collisions(texts)).toEqual([])
    expect(texts.filter(({ left, right, top, bottom }) => left < -2 || right > wide + 2 || top < -2 || bottom > high + 2)).toEqual([])
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

describe('another count in the same chart', () => {
  const sweep = baseLineSweep()
  const states = statesIn(sweep.counts)
  const makers: Record<string, (carriers: number) => Figure> = {
    stationTimes: (carriers) => stationTimes(baseLineCount(carriers), { ...SHIFT, states }),
    zoneOccupancy: (carriers) => zoneOccupancy(baseLineCount(carriers), SHIFT),
  }
  test.each(Object.entries(makers))('%s: rows alone make the same drawing as a new spec', async (_, make) => {
    const [six, sixteen] = [make(6), make(16)]
    expect(six.swapRows).toBe(true)
    const { view } = viewOf(six.spec, 'light', 360)
    await view.runAsync()
    view.data('table', sixteen.rows.map((row) => ({ ...row })))
    await view.runAsync()
    const words = (svg: string) => [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map((found) => found[1])
    const bars = (svg: string) => [...svg.matchAll(/aria-roledescription="bar" d="([^"]+)"/g)].map((found) => found[1])
    const swapped = await view.toSVG()
    const fresh = (await draw(sixteen.spec, 'light', 360)).svg
    view.finalize()
    expect(bars(swapped).length).toBeGreaterThan(20)
    expect(bars(swapped)).toEqual(bars(fresh))
    expect(words(swapped)).toEqual(words(fresh))
    expect(bars(swapped)).not.toEqual(bars((await draw(six.spec, 'light', 360)).svg))
  })
})

describe('the checks see what they are for', () => {
  const two = (dx: number) =>
    ({
      data: { values: [{}] },
      height: 100,
      layer: ['first', 'second'].map((text, index) => ({ mark: { type: 'text', text, x: 50 + dx * index, y: 50 } })),
    }) as Figure['spec']
  test('texts on each other', async () => {
    expect(collisions((await draw(two(10), 'light', 360)).texts)).toEqual(['"first" and "second"'])
    expect(collisions((await draw(two(100), 'light', 360)).texts)).toEqual([])
  })
  test('a warning', () => {
    const odd = { ...two(100), layer: [{ mark: 'bar', encoding: { x: { field: 'a', type: 'quantitative' }, shape: { value: 'circle' } } }] }
    expect(compileWarnings(odd as Figure['spec'], null).length).toBeGreaterThan(0)
  })
  test('a spec that is none', () => expect(isVegaLite({ mark: { type: 'pie' }, data: { values: [] } })).toBe(false))
  test('text that was not drawn', async () => {
    const { svg } = await draw(throughputExample().spec, 'light', 1100)
    expect(png(svg).length).toBeGreaterThan(1.3 * png(svg, false).length)
  })
})
