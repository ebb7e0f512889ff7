import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildDuties } from './duties.ts'
import { Samplers } from '../state/registry.ts'
import { NONE } from '../state/lists.ts'

test('the duties of all stations in one row: unload, load, work, station after station', () => {
  const spec = smallLoop({
    zones: 5,
    variants: 2,
    stations: [
      { at: 1, unload: true, load: { fit: [4, null] }, work: { weld: [null, 5], glue: 2 } },
      { at: 3, work: { weld: 7 } },
    ],
  })
  const samplers = new Samplers()
  const { hasDuty, dutyFirst, entryTask, entrySampler } = buildDuties(spec, samplers)
  expect([...hasDuty]).toEqual([1, 1, 1, 0, 0, 1])
  // unload has no entry, load one, work two; the second station's work one
  expect([...dutyFirst]).toEqual([0, 0, 1, 3, 3, 3, 4])
  expect([...entryTask].map((task) => spec.tasks[task])).toEqual(['fit', 'weld', 'glue', 'weld'])
  const times = [...entrySampler].map((sampler) => (sampler === NONE ? null : samplers.list[sampler]))
  const constant = (value: number) => ({ kind: 'constant', value })
  expect(times).toEqual([constant(4), null, null, constant(5), constant(2), constant(2), constant(7), constant(7)])
})
