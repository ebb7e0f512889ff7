import { expect, test } from 'vitest'
import * as say from './messages.ts'

test('each sentence has its own code, says what was found and what would be right', () => {
  const said = [
    say.formatUnknown('2'),
    say.isScenario(),
    say.unknownKey('wagе', 'wage', ['wage', 'crew']),
    say.wrongType('a text', 'a list'),
    say.notAChoice('dark', 'hard', ['hard', 'soft']),
    say.unitMissing('38', ['38 €/h']),
    say.unitUnknown('kp', ['N', 'kN']),
    say.notANumber('much', '38 €/h'),
    say.decimalComma('38,5 €/h', '38.5 €/h'),
    say.otherCurrency('$', '€'),
    say.doubtOdd('200 %'),
    say.tooBig('1e9 kg', '100000 kg'),
    say.notNamed('alternative', 'lop', 'loop', ['loop']),
    say.tooFew('alternatives', 1, 2),
    say.weightsOff(90),
    say.scoreOdd('6'),
    say.scoreComputed('Output', 'output'),
    say.onlyOneSource(['file', 'set']),
    say.anchorsOdd('both anchors are the same'),
  ]
  expect(new Set(said.map(({ code }) => code)).size).toBe(said.length)
  for (const { message, fix, severity } of said) expect([message !== '', fix !== '', severity]).toEqual([true, true, 'error'])
  expect(say.unknownKey('wagе', 'wage', ['wage', 'crew']).fix).toContain('wage')
})
