import { expect, test } from 'vitest'
import { chosenAlternative, needsShift } from './chosen.ts'

const decision = { alternatives: [{ name: 'today' }, { name: 'loop' }], promise: { of: 1 }, acceptance: null } as never

test('the alternative is the one that the section names; a file without it says where it goes', () => {
  expect(chosenAlternative(decision, 'promise', 'pump.yaml')).toEqual({ of: 1, name: 'loop' })
  expect(() => chosenAlternative(decision, 'acceptance', 'pump.yaml')).toThrow(
    'there is no acceptance in pump.yaml: write it under "acceptance:"',
  )
})

test('what is told by shifts needs one that is judged', () => {
  const scenario = (shifts: number | null) => ({ name: 'Pump', calendar: shifts === null ? null : { shifts } })
  expect(() => needsShift(scenario(1), 'a promise is')).not.toThrow()
  for (const shifts of [null, 2])
    expect(() => needsShift(scenario(shifts), 'a promise is')).toThrow(
      'a promise is by shifts: "Pump" needs a calendar that judges one shift',
    )
})
