/** Lines whose intervals are counted: each is limited by something else. */
import { type LineSpec, loopLine } from '@loopwright/line'
import { withCarriers } from '@loopwright/study/change'
import { lineOfFile } from '../helpers/lineOfFile.ts'

const DEMO = 'scenarios/outdoor-unit-base-line.yaml'

/** A stop of ten minutes for each five that it works: few stops, each of which weighs much. */
const mostlyDown = (): LineSpec =>
  loopLine({
    zones: ['Z1', 'Z2', 'Z3', 'Z4', 'Z5', 'Z6', 'Z7', 'Z8'],
    paths: Array.from({ length: 8 }, (_, from) => ({ from, move: 2, clear: 1 })),
    drive: { reaction: 0 },
    carriers: 3,
    stations: {
      A: { zone: 'Z1', load: { place: 8 } },
      B: { zone: 'Z3', work: { fit: { kind: 'lognormal', mean: 20, cv: 0.3 } } },
      C: { zone: 'Z5', unload: { 'take off': 6 } },
    },
    stops: { jam: { at: 'B', after: { kind: 'exponential', mean: 300 }, lasts: { kind: 'exponential', mean: 600 } } },
    warmup: 3600,
    end: 10_800,
  }).spec

export const LINES: Readonly<Record<string, () => LineSpec>> = {
  'demo, 12 carriers: the stations': () => lineOfFile(DEMO),
  'demo, 6 carriers: too few of them': () => withCarriers(lineOfFile(DEMO), 6),
  'a machine that is down more than up': mostlyDown,
  'test and repair: products that come': () => lineOfFile('scenarios/test-and-repair-line.yaml'),
}
