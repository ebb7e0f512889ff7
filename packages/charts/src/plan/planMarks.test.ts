import { describe, expect, test } from 'vitest'
import { baseLinePlan } from '../examples/baseLine.ts'
import { outline } from './planGeometry.ts'
import { bracket, bracketEdge, bracketSpan, cellMark, chevron, chevronsOf, namesFit, type Paper } from './planMarks.ts'

const zones = baseLinePlan(10)
const loop = outline(zones)
const paper: Paper = { scale: 40, origin: { x: 100, y: 50 } }
/** a ring of seven zones */
const round = outline(zones.slice(0, 7).map((zone) => ({ ...zone, turn: null })))
const radius = (7 * 1.5) / (2 * Math.PI)
const roundPaper: Paper = { scale: 40, origin: { x: 300, y: 300 } }
const ALL = { names: true, labels: true }
const BARE = { names: false, labels: false }

const numbers = (text: string) => [...text.matchAll(/-?\d+(?:\.\d+)?/g)].map((found) => Number(found[0]))

describe('a straight cell', () => {
  test('is as long as its zone, in pixels of the scale', () => {
    const path = /d="([^"]+)"/.exec(cellMark(loop.cells[1]!, zones[1]!, paper, null, ALL))![1]!
    // Z02: 1.5 … 3 m along, 1.5 m wide, 40 pixels a metre
    expect(numbers(path)).toEqual([160, 20, 220, 20, 220, 80, 160, 80])
  })
  test('reads out name, place and number', () => {
    expect(cellMark(loop.cells[1]!, zones[1]!, paper, 'share of the shift, %', ALL)).toContain(
      `<title>Z02, Load: ${zones[1]!.label} (share of the shift, %)</title>`,
    )
  })
  test('carries a cross where it is a transfer', () => {
    expect(cellMark(loop.cells[8]!, zones[8]!, paper, null, ALL).match(/<path/g)!.length).toBe(2)
    expect(cellMark(loop.cells[7]!, zones[7]!, paper, null, ALL).match(/<path/g)!.length).toBe(1)
  })
  test('holds only the text it has room for', () => {
    const small = { ...paper, scale: 8 }
    expect(namesFit(loop.cells, zones, paper)).toBe(true)
    expect(namesFit(loop.cells, zones, small)).toBe(false)
    expect(cellMark(loop.cells[1]!, zones[1]!, small, null, BARE)).not.toContain('<text')
  })
  test('has its bracket outside, above the top side', () => {
    expect(bracketEdge(loop.cells[1]!, paper)).toEqual({ x: 190, y: 10 })
    const ys = numbers(/d="([^"]+)"/.exec(bracket(loop.cells[1]!, paper))![1]!).filter((_, index) => index % 2 === 1)
    expect(ys).toEqual([17, 11, 11, 17])
    expect(bracketSpan(loop.cells[1]!, paper)).toEqual({ top: 10, bottom: 10 })
  })
})

test('a chevron points ahead, inside the loop past the border to the next zone, in no number’s way', () => {
  // behind corner Z09 travel goes down
  const [x1, y1, x2, y2, x3, y3] = numbers(/points="([^"]+)"/.exec(chevron(chevronsOf(loop.cells, zones)[0]!, paper))![1]!) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  expect(y2).toBeGreaterThan(y1)
  expect(y1).toBe(y3)
  expect(x2).toBe((x1 + x3) / 2)
})

describe('a cell of a ring', () => {
  test('lies between the radii of the band', () => {
    const inner = (radius - round.cells[0]!.halfWidth) * 40
    const outer = (radius + round.cells[0]!.halfWidth) * 40
    const path = /d="([^"]+)"/.exec(cellMark(round.cells[1]!, zones[1]!, roundPaper, null, BARE))![1]!
    const corners = path.replace(/A[\d.]+ [\d.]+ 0 \d \d /g, 'L')
    const all = numbers(corners)
    const radii = [0, 2, 4, 6].map((at) => Math.hypot(all[at]! - 300, all[at + 1]! - 300))
    expect(all.length).toBe(8)
    expect(radii[0]).toBeCloseTo(outer, 0)
    expect(radii[1]).toBeCloseTo(outer, 0)
    expect(radii[2]).toBeCloseTo(inner, 0)
    expect(radii[3]).toBeCloseTo(inner, 0)
  })
  test('has a slanting bracket', () => {
    const { top, bottom } = bracketSpan(round.cells[3]!, roundPaper)
    expect(bottom - top).toBeGreaterThan(10)
    expect(bracket(round.cells[3]!, roundPaper)).toContain('A')
  })
})
