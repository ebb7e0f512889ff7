import { describe, expect, test } from 'vitest'
import { baseLinePlan } from '../examples/baseLine.ts'
import { loopPlan } from './plan.ts'

const zones = baseLinePlan(10)
const meaning = 'share of the shift with a carrier in the zone, %'
const box = (svg: string) => /viewBox="([^"]+)"/.exec(svg)![1]!.split(' ').map(Number) as [number, number, number, number]

describe('the drawing', () => {
  test.each([1100, 360, 328])('%d pixels wide: all text lies inside it, none below 12 pixels', (widthPixels) => {
    const { svg } = loopPlan(zones, { widthPixels, valueMeaning: meaning })
    const [, top, width, height] = box(svg)
    expect(width).toBe(widthPixels)
    for (const [, x, y, size] of svg.matchAll(/<text x="([\d.-]+)" y="([\d.-]+)" font-size="(\d+)"/g)) {
      expect(Number(size)).toBeGreaterThanOrEqual(12)
      expect(Number(x)).toBeGreaterThanOrEqual(0)
      expect(Number(x)).toBeLessThanOrEqual(width)
      expect(Number(y)).toBeGreaterThanOrEqual(top)
      expect(Number(y)).toBeLessThanOrEqual(top + height)
    }
  })
  test('a narrow one stands upright', () => {
    const [, , wide, low] = box(loopPlan(zones).svg)
    const [, , narrow, high] = box(loopPlan(zones, { widthPixels: 360 }).svg)
    expect(wide / low).toBeGreaterThan(2)
    expect(high / narrow).toBeGreaterThan(1.2)
  })
  test('every zone is drawn, every transfer crossed, every corner has its chevron, every station its bracket and name', () => {
    const { svg } = loopPlan(zones, { valueMeaning: meaning })
    expect(svg.match(/<g data-zone="\d+"><title>/g)!.length).toBe(22)
    expect(svg.match(/, transfer: \d+ /g)!.length).toBe(4)
    expect(svg.match(/data-travel/g)!.length).toBe(4)
    expect(svg.match(/stroke-width="1.6"/g)!.length).toBe(7)
    for (const title of ['Load', 'Refrigerant parts', 'Joining', 'Wiring', 'Tightness test', 'Unload'])
      expect(svg).toContain(`>${title}</text>`)
  })
  test('no colour but by a variable of the page', () => {
    const { svg } = loopPlan(zones, { valueMeaning: meaning })
    expect(svg.replace(/var\(--lw-[\w-]+, #[0-9a-f]{6}\)/g, '')).not.toMatch(/#[0-9a-f]{3,6}|rgb/)
  })
  test('ids begin as asked, so that two drawings can stand on one page', () => {
    const { svg } = loopPlan(zones, { id: 'narrow' })
    expect([...svg.matchAll(/ id="([^"]+)"/g)].map((found) => found[1])).toEqual(['narrow-title', 'narrow-desc'])
    expect(svg).toContain('aria-labelledby="narrow-title narrow-desc"')
  })
  test('load and unload stand by their words where the title does not say so', () => {
    const renamed = zones.map((zone) =>
      zone.station?.title === 'Load' ? { ...zone, station: { ...zone.station, title: 'Base pan' } } : zone,
    )
    expect(loopPlan(renamed).svg).toContain('>load</text>')
    expect(loopPlan(zones).svg).not.toContain('>load</text>')
  })
  test('a name cannot break out of it', () => {
    const nasty = zones.map((zone, index) => (index === 0 ? { ...zone, name: '</svg><script>' } : zone))
    expect(loopPlan(nasty).svg).not.toContain('<script>')
  })
})

describe('what it says', () => {
  test('stations in travel order, transfers, the fullest zone', () => {
    const { description, svg, note, toScale } = loopPlan(zones, { valueMeaning: meaning })
    expect(description).toContain(
      'A loop of 22 zones, 33 m, to scale. Stations in travel order: Load in Z02 (load), Refrigerant parts in Z04,',
    )
    expect(description).toContain('Transfers: Z09, Z11, Z20, Z22.')
    expect(description).toMatch(/Highest share of the shift with a carrier in the zone, %: Z\d\d, \d+\.$/)
    expect(svg).toContain(`<desc id="plan-desc">${description}</desc>`)
    expect([toScale, note]).toEqual([true, null])
  })
  test('a loop without corners is a ring of two straights, a chevron at the start of each, and says so', () => {
    const { note, svg, toScale, description } = loopPlan(zones.map((zone) => ({ ...zone, turn: null, transfer: false })))
    expect(note).toBe('No corners are given: drawn as a ring, lengths to scale along it.')
    expect(svg).toContain('No corners are given')
    expect(svg.match(/data-travel/g)!.length).toBe(2)
    expect(toScale).toBe(false)
    expect(description).toContain('drawn as a ring')
  })
  test('who is where at an instant: a plate in the cell, and in words', () => {
    const carried = zones.map((zone, index) => ({
      ...zone,
      value: null,
      label: null,
      ...(index === 3 ? { carrier: '7' } : {}),
    }))
    const { svg, description } = loopPlan(carried)
    expect(svg).toContain('data-carrier="7"')
    expect(svg).toContain('carrier 7')
    expect(description).toContain('Carriers: 7 in Z04.')
    expect(svg).toContain('A number on a plate of its own: a carrier')
  })
  test('a width that nobody can read is refused', () => expect(() => loopPlan(zones, { widthPixels: 100 })).toThrow(RangeError))
})
