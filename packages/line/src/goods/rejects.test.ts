/** Timelines of inspection and rework, worked out by hand from MODEL.md §5. */
import { describe, expect, test } from 'vitest'
import { chain, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { smallLoop, tell, timeline, type Wish } from '../../../../tests/helpers/smallLoop.ts'
import type { LineSpec } from '../spec.ts'

type Marks = Readonly<Record<string, 'rework' | 'only'>>

/** Adds inspections (probability by task) and rework to a line. */
function inspected(
  spec: LineSpec,
  probabilities: Readonly<Record<string, number>>,
  marks: Marks = {},
  accepts: LineSpec['stations'][number]['accepts'] = 'good',
): LineSpec {
  const byTask = <T>(given: Readonly<Record<string, T>>) =>
    Object.entries(given).map(([task, value]) => [spec.tasks.indexOf(task), value] as const)
  return {
    ...spec,
    inspections: byTask(probabilities).map(([task, rejectProbability]) => ({ task, rejectProbability })),
    rework: byTask(marks).map(([task, mark]) => ({ task, only: mark === 'only' })),
    stations: spec.stations.map((station) => ({ ...station, accepts: station.unload === null ? 'good' : accepts })),
  }
}
const words = (spec: LineSpec): string[] => timeline(spec).filter((line) => / (load|work|unload|reject|off) /.test(line))

// move 4, clear 3: load in Z1 (1 s), fit (5 s) and test (2 s) in Z2, unload in Z3 (1 s)
const LOOP: Wish = {
  zones: 4,
  start: [0],
  move: 4,
  clear: 3,
  stations: [
    { at: 1, load: 1 },
    { at: 2, work: { fit: 5, test: 2 } },
    { at: 3, unload: 1 },
  ],
  until: 60,
}

describe('a product that is rejected', () => {
  test('has its list again at the next arrival; the inspection on it decides anew; good, it is taken off', () => {
    // load 4–5, Z2 9: fit + test 7 s to 16, rejected with certainty; passes Z3 (unload takes good ones only) at 20, Z0 24, Z1 28, Z2 32: again to 39 …
    const spec = inspected(smallLoop(LOOP), { test: 1 }, { fit: 'rework', test: 'rework' })
    expect(words(spec)).toEqual([
      '4 load begins S1 c0',
      '5 load ends S1 c0',
      '9 work begins S2 c0',
      '16 work ends S2 c0',
      '16 reject p0 c0',
      '32 work begins S2 c0',
      '39 work ends S2 c0',
      '39 reject p0 c0',
      '55 work begins S2 c0',
    ])
    const { result } = tell(spec)
    expect([result.loads, result.output, result.rejections, result.rejectedTakenOff]).toEqual([1, 0, 2, 0])
  })

  test('whose rework has no inspection in it is good when the last task of its list is done', () => {
    // rework of fit alone: 32–37, then good: unload in Z3 41–42
    const spec = inspected(smallLoop(LOOP), { test: 1 }, { fit: 'rework' })
    expect(words(spec).slice(5)).toEqual([
      '32 work begins S2 c0',
      '37 work ends S2 c0',
      '41 unload begins S3 c0',
      '42 unload ends S3 c0',
      '42 off p0 c0',
      '50 load begins S1 c0',
      '51 load ends S1 c0',
      '55 work begins S2 c0',
    ])
    expect(tell(spec).result.output).toBe(1)
  })

  test('with an empty list stays rejected for ever', () => {
    const spec = inspected(smallLoop(LOOP), { test: 1 })
    expect(words(spec).slice(4)).toEqual(['16 reject p0 c0'])
  })

  test('is taken off where rejected ones are accepted, counted apart', () => {
    const spec = inspected(smallLoop({ ...LOOP, until: 22 }), { test: 1 }, {}, 'all')
    const { result } = tell(spec)
    // Z3 at 20, off at 21
    expect([result.output, result.rejectedTakenOff, result.timeInLine.count]).toEqual([0, 1, 0])
    expect(result.productsInLineMean).toBe((21 - 4) / 22)
    // a station for rejected ones alone lets good ones pass
    const good = inspected(smallLoop({ ...LOOP, until: 22 }), { test: 0 }, {}, 'rejected')
    expect(tell(good).result.rejectedTakenOff).toBe(0)
    expect(words(good).filter((line) => line.includes('unload'))).toEqual([])
  })

  test('a task for rejected ones only is done for nobody else, and not in the same stay', () => {
    // mend stands in the same station as the inspection: next time round, 3 s
    const wish: Wish = { ...LOOP, stations: [LOOP.stations![0]!, { at: 2, work: { test: 2, mend: 3 } }, LOOP.stations![2]!] }
    const spec = inspected(smallLoop(wish), { test: 1 }, { mend: 'only' })
    // test 9–11, rejected; Z3 15, Z0 19, Z1 23, Z2 27: mend to 30, good; Z3 34: unload to 35
    expect(words(spec).slice(2, 9)).toEqual([
      '9 work begins S2 c0',
      '11 work ends S2 c0',
      '11 reject p0 c0',
      '27 work begins S2 c0',
      '30 work ends S2 c0',
      '34 unload begins S3 c0',
      '35 unload ends S3 c0',
    ])
    const never = inspected(smallLoop({ ...wish, until: 22 }), { test: 0 }, { mend: 'only' })
    expect(words(never).slice(2)).toEqual([
      '9 work begins S2 c0',
      '11 work ends S2 c0',
      '15 unload begins S3 c0',
      '16 unload ends S3 c0',
      '16 off p0 c0',
    ])
  })
})

test('where a path takes rejected products they take it, and nobody else does', () => {
  // Z2 inspects; 2 → 3 for all, 2 → 4 for rejected ones; both come back to 0
  const spec = inspected(
    smallGraph({
      zones: 5,
      start: [0],
      paths: [...chain(0, 1, 2, 3, 0), { from: 2, to: 4, takes: { rejected: true } }, { from: 4, to: 0 }],
      stations: [
        { at: 1, load: 1 },
        { at: 2, work: { test: 2 } },
        { at: 3, unload: 1 },
        { at: 4, work: { mend: 3 } },
      ],
      move: 4,
      clear: 3,
      until: 45,
    }),
    { test: 1 },
    { mend: 'only' },
  )
  // test 9–11; Z4 at 15: mend to 18, good; Z0 22, Z1 26 (loaded: passes), Z2 30 (test was had), Z3 34: unload to 35
  expect(words(spec)).toEqual([
    '4 load begins S1 c0',
    '5 load ends S1 c0',
    '9 work begins S2 c0',
    '11 work ends S2 c0',
    '11 reject p0 c0',
    '15 work begins S4 c0',
    '18 work ends S4 c0',
    '34 unload begins S3 c0',
    '35 unload ends S3 c0',
    '35 off p0 c0',
    '43 load begins S1 c0',
    '44 load ends S1 c0',
  ])
})

test('draws: the first inspection by serial, repeated ones and repeated tasks in order of use', () => {
  const random = { kind: 'exponential', mean: 5 } as const
  const wish: Wish = { ...LOOP, stations: [LOOP.stations![0]!, { at: 2, work: { fit: random, test: 2 } }, LOOP.stations![2]!], until: 5000 }
  const plain = tell(inspected(smallLoop(wish), { test: 0 })).result
  const some = inspected(smallLoop(wish), { test: 0.3 }, { fit: 'rework', test: 'rework' })
  const { result, lines } = tell(some)
  expect(result.rejections).toBeGreaterThan(20)
  expect(result.output).toBeLessThan(plain.output)
  // a product's first fit takes what it takes without inspection
  const firstWork = (told: readonly string[]) => {
    const begins = told.findIndex((line) => line.includes('work begins'))
    return Number(told[begins + 1]!.split(' ')[0]) - Number(told[begins]!.split(' ')[0])
  }
  expect(firstWork(lines)).toBe(firstWork(tell(inspected(smallLoop(wish), { test: 0 })).lines))
  // share rejected at the first inspection: 0.3 within four standard deviations of a binomial
  const loads = result.loads
  const firsts = new Set(lines.filter((line) => line.includes('reject')).map((line) => line.split(' ')[2])).size
  expect(Math.abs(firsts - 0.3 * loads)).toBeLessThan(4 * Math.sqrt(loads * 0.21))
})
