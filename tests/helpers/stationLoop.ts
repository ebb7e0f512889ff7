/** The small line of the tests of studies: chance, stops and a break within an hour. */
import { type LineSpec, loopLine } from '@loopwright/line'

/** Eight zones with moves of 2 s and clears of 1 s; an hour to warm up, an hour judged. */
const LINE = loopLine({
  zones: ['Z1', 'Z2', 'Z3', 'Z4', 'Z5', 'Z6', 'Z7', 'Z8'],
  paths: Array.from({ length: 8 }, (_, from) => ({ from, move: 2, clear: 1 })),
  drive: { reaction: 0 },
  carriers: 3,
  stations: {
    A: { title: 'Load', zone: 'Z1', load: { place: 8 }, release: 1 },
    B: { title: 'Fit', zone: 'Z3', work: { fit: { kind: 'lognormal', mean: 20, cv: 0.3 } }, release: 1 },
    C: { title: 'Unload', zone: 'Z5', unload: { 'take off': 6 }, release: 1 },
  },
  products: { variants: ['one'] },
  stops: { jam: { at: 'B', after: { kind: 'exponential', mean: 1800 }, lasts: { kind: 'exponential', mean: 60 } } },
  breaks: [{ after: 5000, lasts: 600 }],
  warmup: 3600,
  end: 7200,
})

/** With some fields of the complete line replaced. */
export const stationLoop = (change: Partial<LineSpec> = {}): LineSpec => ({ ...LINE.spec, ...change })
