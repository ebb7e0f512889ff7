import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { dutyAhead, dutyApplies, hasDutyLeft } from './dutyAhead.ts'
import { resetLine } from '../build/start.ts'
import { LOAD_DUTY, UNLOAD_DUTY, WORK_DUTY } from '../state/work.ts'

test('what is left for a carrier depends on its product and on what that has had', () => {
  const stations = [
    { at: 1, unload: true as const, load: 1 },
    { at: 2, work: { weld: [5, null] } },
  ]
  const line = buildLine(smallLoop({ zones: 4, start: [0], variants: 2, stations }))
  resetLine(line, 'a', 0)
  expect([hasDutyLeft(line, 0, 0), hasDutyLeft(line, 1, 0), dutyAhead(line, 0, 3)]).toEqual([true, false, false])
  expect([dutyApplies(line, 0, UNLOAD_DUTY, 0), dutyApplies(line, 0, LOAD_DUTY, 0)]).toEqual([false, true])
  line.goods.carrierSerial[0] = 0
  line.goods.carrierVariant[0] = 0
  expect([dutyApplies(line, 0, UNLOAD_DUTY, 0), dutyApplies(line, 0, LOAD_DUTY, 0)]).toEqual([true, false])
  expect([dutyApplies(line, 1, WORK_DUTY, 0), dutyAhead(line, 0, 2)]).toEqual([true, true])
  line.goods.carrierVariant[0] = 1
  expect(hasDutyLeft(line, 1, 0)).toBe(false)
  line.goods.carrierVariant[0] = 0
  line.work.taskDone[1] = 1
  expect(hasDutyLeft(line, 1, 0)).toBe(line.spec.tasks[1] !== 'weld')
})
