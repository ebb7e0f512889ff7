import { replicate } from '@loopwright/study'
import { describe, expect, test } from 'vitest'
import { scenarioOf, SMALL_LINE, testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { endSentence } from './endWords.ts'

const small = testLine()
const run = (await replicate(small.line, { replications: 1 }, { seed: '1', workers: 0 }))[0]!

describe('the end', () => {
  test('of the window is not worth a word', () => expect(endSentence(run.end, small.line)).toBeNull())
  test('of the products', () =>
    expect(endSentence({ reason: 'out of products', atSeconds: 60, waits: [], cycle: [], unmanned: [] }, small.line)).toMatch(
      /^OUT OF PRODUCTS after 60 s/,
    ))
  // MODEL.md §5: a station unloads, then loads; whoever waits for the product that never comes stays in its zone
  test('of the products, at a station that unloads and loads: why the last ones stay on the line', async () => {
    const sequence = Array.from({ length: 8 }, () => 0)
    const ended = async (text: string) => {
      const whole = { ...scenarioOf(text).line, mix: { kind: 'list', sequence } as const, window: { warmupSeconds: 0, endSeconds: 36_000 } }
      const { loads, output, end } = (await replicate(whole, { replications: 1 }, { seed: '1', workers: 0 }))[0]!
      expect(loads).toBe(8)
      return { output, said: endSentence(end, whole) }
    }
    const apart = await ended(SMALL_LINE)
    expect(apart.output).toBe(8)
    expect(apart.said).toMatch(/nothing more was made\.$/)
    const inOne = await ended(SMALL_LINE.replace('load: {', 'unload: { take: 15 s }, load: {').replace(/^ {2}C: .*$/m, ''))
    // of four carriers one is emptied and waits, three with a product stand behind it
    expect(inOne.output).toBe(5)
    expect(inOne.said).toContain(
      'nothing more was made. A takes a product off and loads the next one in one stay: a carrier there now waits for a product, so that carriers behind do not come up, and any product on them stays on the line.',
    )
  })
  test('a long circle is cut short', () => {
    const line = { ...small.line, zones: Array.from({ length: 20 }, (_, index) => ({ ...small.line.zones[0]!, name: `N${index}` })) }
    const end = { reason: 'gridlock', atSeconds: 0, waits: [], cycle: line.zones.map((_, index) => index), unmanned: [] } as const
    expect(endSentence(end, line)).toContain('N11 → … (20 zones)')
  })
})

describe('why it stood still', () => {
  // four zones in a row; stations in the second and the last, each of which needs two operators
  const zones = small.line.zones.slice(0, 4)
  const stations = [1, 3].map((zone) => ({ ...small.line.stations[0]!, zone, operatorsNeeded: 2 }))
  const path = small.line.paths[0]!
  const ring = (...places: readonly number[]) => places.slice(1).map((to, k) => ({ ...path, from: places[k]!, to }))
  const operator = (name: string) => ({ name, stations: [0, 1], start: 0 })
  const line = { ...small.line, zones, stations, paths: ring(0, 1, 2, 3, 0), operators: [operator('op0'), operator('op1')] }
  const end = { reason: 'gridlock', atSeconds: 60, waits: [], cycle: [], unmanned: [] } as const
  const why = (more: object, change: object = {}) =>
    endSentence({ ...end, ...more }, { ...line, ...change })!.split('nothing more was made. ')[1]

  test('an operator who waits for himself, and who waits for him', () => {
    expect(why({ unmanned: [1, 2] }, { operators: [operator('op0')] })).toBe(
      'An operator waits for himself: the work at Z02 needs 2 operators, and 1 covers it. Z03 waits for somebody who is bound so. Let more operators cover it, or need fewer.',
    )
  })

  test('operators who wait for each other', () => {
    expect(why({ unmanned: [1, 3] })).toBe(
      'Operators wait for each other: whom the work or push at Z02, Z04 needs is bound to a station that waits for somebody else. Let more operators cover it, or need fewer.',
    )
  })

  test('a merge', () => {
    const merging = { paths: [...ring(0, 1, 2, 1), ...ring(3, 0)] }
    expect(
      why(
        {
          waits: [
            [0, 1],
            [1, 2],
            [2, 1],
          ],
          cycle: [1, 2],
        },
        merging,
      ),
    ).toBe(
      'These zones wait for each other in a circle: Z02 → Z03. Z02, where two ways meet, fills its own exit: what came in there waits for a zone that waits for it. Fewer carriers, or right of way at Z02 for those that leave the circle, may let it go on.',
    )
  })

  test('a circle, and beside it work without operators', () => {
    expect(why({ waits: [], cycle: [0, 2], unmanned: [1, 3] })).toMatch(
      /^These zones wait for each other in a circle: Z01 → Z03\. There are too many carriers: .* Operators wait for each other: /,
    )
  })

  test('no way on: where the carrier stands, if others wait for it', () => {
    expect(
      why({
        waits: [
          [0, 1],
          [1, 2],
        ],
      }),
    ).toMatch(/^No zones wait in a circle: the carrier in Z03 has no way on/)
    expect(why({})).toMatch(/^No zones wait in a circle: some carrier has no way on/)
  })
})
