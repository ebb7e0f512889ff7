/** Who is sent where, worked out by hand from MODEL.md §6. */
import { describe, expect, test } from 'vitest'
import type { Wish } from '../../../../tests/helpers/smallLoop.ts'
import { staffEvents, staffed } from '../../../../tests/helpers/staffed.ts'
import type { WalkSpec } from '../spec.ts'

describe('who is sent', () => {
  test('the station that has called longest, then the lower index; of several free ones the nearest, then the lower index', () => {
    // three stations next to each other, one carrier before each: all rest at 4
    const wish: Wish = {
      zones: 7,
      start: [0, 2, 4],
      stations: [
        { at: 1, load: 10 },
        { at: 3, load: 10 },
        { at: 5, load: 10 },
      ],
      until: 20,
    }
    const walks: WalkSpec[] = [
      { between: [0, 2], seconds: 2 },
      { between: [1, 2], seconds: 1 },
    ]
    const spec = staffed(wish, {
      operators: [
        { stations: [0, 1, 2], start: 2 },
        { stations: [0, 1, 2], start: 2 },
      ],
      walks,
    })
    // at 4 all three call: S1 first (index), both operators stand 2 s away: op0. Then S3: op1, 1 s away. S5 waits until one is free:
    // op1 ends at 15 and walks 1 s; op0 ends at 16.
    expect(staffEvents(spec)).toEqual([
      '4 send op0 to S1',
      '4 send op1 to S3',
      '5 op1 at S3',
      '5 load begins S3 c1',
      '6 op0 at S1',
      '6 load begins S1 c0',
      '15 load ends S3 c1',
      '15 op1 free',
      '15 send op1 to S5',
      '16 load ends S1 c0',
      '16 op0 free',
      '16 op1 at S5',
      '16 load begins S5 c2',
    ])
  })

  test('two operators for one task: it starts when both are there, and both stay to the end of the release', () => {
    const wish: Wish = { zones: 4, start: [0], stations: [{ at: 1, load: 10, release: 2 }], until: 25 }
    const spec = staffed(
      { ...wish, stations: [...wish.stations!, { at: 2, work: 1 }] },
      { operators: [{ stations: [0] }, { stations: [0, 1], start: 1 }], needed: { 0: 2 }, walks: [{ between: [0, 1], seconds: 3 }] },
    )
    expect(staffEvents(spec)).toEqual([
      '4 send op0 to S1',
      '4 op0 at S1',
      '4 send op1 to S1',
      '7 op1 at S1',
      '7 load begins S1 c0',
      '17 load ends S1 c0',
      '17 release begins S1 c0',
      '19 release ends S1 c0',
      '19 op0 free',
      '19 op1 free',
      // c0 rests in Z2 at 23; op1 walks back
      '23 send op1 to S2',
    ])
  })

  test('nobody is sent to a station that is down, but it keeps whom it has', () => {
    // S1 is down 3–13 (before the carrier comes at 4); S3 calls at 8 (from Z2 at 4)
    const wish: Wish = {
      zones: 6,
      start: [0, 2],
      stations: [
        { at: 1, load: 5 },
        { at: 3, load: 5 },
      ],
      stops: [{ name: 'jam', on: { kind: 'station', index: 0 }, clock: 'calendar', after: 3, repair: 10 }],
      until: 20,
    }
    const spec = staffed(wish, { operators: [{ stations: [0, 1] }] })
    // at 4 both rest: S1 (load) sets no product aside while held, so it does not call; S3 is served 4–9; S1 from 13
    expect(staffEvents(spec)).toEqual([
      '3 stop jam',
      '4 send op0 to S3',
      '4 op0 at S3',
      '4 load begins S3 c1',
      '9 load ends S3 c1',
      '9 op0 free',
      '13 repaired jam',
      '13 send op0 to S1',
      '13 op0 at S1',
      '13 load begins S1 c0',
      '18 load ends S1 c0',
      '18 op0 free',
    ])
  })
})
