/** Each rule finds its bad sample and lets its good one pass. */
import { expect, test } from 'vitest'
import { commandNamed } from './commands.ts'
import { lineNamed } from './lines.ts'
import { pageText } from './pageText.ts'
import { type Judged, RULES } from './rules.ts'

const OPEN = lineNamed('arrivals-limit')
const PUMP = lineNamed('pump-line')
const titled = { ...PUMP, written: { stops: { feederJam: { title: 'jam of the feeder' } } } }
const interval = { mean: 213.4, halfWidth: 6.8 }
const states = { working: 0.4, blocked: 0.1, starved: 0.05, 'waiting for operator': 0.44 }
const document = {
  answer: { chosen: 9 },
  counts: [
    { carriers: 9, mean: interval, meetsPlan: { successes: 18, n: 20 }, stations: [{ name: 'S2', title: 'Impeller', shares: states }] },
  ],
}
const page = pageText('<body><section class="answer" id="answer"><p>It makes 3.</p></section><td>3 ± 1</td><td>Load</td></body>')

const base: Judged = { code: 0, text: '', json: null, page: null, runs: document, command: commandNamed('runs'), line: PUMP }

const SAMPLES: Readonly<Record<string, { readonly bad: Partial<Judged>; readonly good: Partial<Judged> }>> = {
  columns: { bad: { text: 'x'.repeat(81) }, good: { text: `${'x'.repeat(80)}\ny` } },
  'program words': { bad: { text: 'It makes NaN a shift.' }, good: { text: 'Nothing is known.' } },
  'open line': { bad: { text: 'The loop makes 9.', line: OPEN }, good: { text: 'The line is no single closed loop.', line: OPEN } },
  titles: { bad: { text: 'feederJam takes 3 min.', line: titled }, good: { text: 'The jam of the feeder takes 3 min.', line: titled } },
  'one of many': { bad: { text: 'It makes 1 units more.' }, good: { text: 'It makes 1 unit, 0.1 units or 11 units more.' } },
  'number of the verb': { bad: { text: 'That is what 6 carriers makes.' }, good: { text: 'With 16 carriers the loop makes 9.' } },
  nothing: {
    bad: { text: 'GRIDLOCK after 0 s: it stood still.' },
    good: { text: 'GRIDLOCK at once; one shift in ten takes at least 0.6 min.' },
  },
  heads: {
    bad: { text: 'Left out here for want of room: of; Starved.' },
    good: { text: 'Left out here for want of room: Limited at; P10.' },
  },
  'long seconds': {
    bad: { text: '  B Lining    39\u202f810.1' },
    good: { text: '  B Lining  11.06, 1\u202f636.3 units, 39\u202f810 units' },
  },
  'list end': {
    bad: { text: 'It makes 24.', json: { outOfProducts: 3 } },
    good: { text: 'The list of\nproducts ran out before the end.', json: { outOfProducts: 3 } },
  },
  'one interval': {
    // t(0.975, 2) = 4.302653 (tables of Student's t), times 1/√3
    bad: { json: { units: [9, 10, 11], mean: { n: 3, level: 0.95, halfWidth: 4.9 } } },
    good: { json: { units: [9, 10, 11], mean: { n: 3, level: 0.95, halfWidth: 4.302652729696142 / Math.sqrt(3) } } },
  },
  pairing: {
    bad: { text: 'Independent runs would need 9 times as many.', json: { n: 5, pairingGain: 9 } },
    good: { text: 'Independent runs would need 9 times as many.', json: { n: 20, pairingGain: 9 } },
  },
  verdict: { bad: { text: 'The line is safe.' }, good: { text: 'A safety stop comes once.' } },
  'plan first': { bad: { text: 'It makes 9.5 a shift. The plan is met.' }, good: { text: 'The plan is met.\nIt makes 9.' } },
  'one rounding': {
    bad: { text: 'It makes 213 ± 7, then 213.4 ± 6.8.', json: document },
    good: { text: '213 ± 7, and 213 ± 7', json: document },
  },
  pairs: { bad: { text: 'It makes 214 ± 7.', json: document }, good: { text: 'It makes 213, known to ± 7; or 210 ± 10.', json: document } },
  'plan agrees': {
    bad: { text: 'The plan is met in 90 of 100 shifts simulated.', json: document },
    good: { text: 'The plan is met in 18 of\n20 shifts simulated.', json: document },
  },
  'state leads': {
    bad: { text: 'S2 Impeller is mostly starved.', json: document },
    good: { text: 'S2 Impeller waits for operators.', json: document },
  },
  'on the page': {
    bad: { text: 'It makes 3.\n\n  Load  3 ± 1\n  Load  4 ± 1', page },
    good: { text: 'It makes 3.\n\n  Load  3 ± 1\n  Load  3 ± 1', page },
  },
  'in the terminal': { bad: { text: 'It makes 4.', page }, good: { text: 'It\nmakes 3.', page } },
}

test('every rule has its samples', () => expect(Object.keys(SAMPLES).sort()).toEqual(RULES.map(({ name }) => name).sort()))

test.each(RULES)('$name: $says', ({ name, find }) => {
  const { bad, good } = SAMPLES[name]!
  expect(find({ ...base, ...bad })).toHaveLength(1)
  expect(find({ ...base, ...good })).toEqual([])
})

test('a single run that missed the plan is not told to have met it, nor by another number', () => {
  const { find } = RULES.find(({ name }) => name === 'plan agrees')!
  const json = { document: 'run', output: 211, plan: 330 }
  expect(find({ ...base, json, text: 'The plan of 330 was met.' })).toHaveLength(1)
  expect(find({ ...base, json, text: 'The plan of 330 was missed by 118 units.' })).toHaveLength(1)
  expect(find({ ...base, json, text: 'The plan of 330 was missed by 119 units.' })).toEqual([])
})
