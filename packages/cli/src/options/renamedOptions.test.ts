import { expect, test } from 'vitest'
import { memoryShell } from '../../../../tests/helpers/memoryShell.ts'
import { program } from '../program.ts'
import { renamedOption } from './renamedOptions.ts'

test.each([
  ['order', '--mine', '--try'],
  ['order', '--keep', '--stay'],
  ['order', '--delta', '--least-gain'],
  ['order', '--replications', '--check-replications'],
  ['carriers', '--replications', '--at-most'],
  ['steady', '--replications', '--runs'],
])('%s %s is %s, which is there, and the old one is not', (command, old, now) => {
  expect(renamedOption(command, old)).toContain(`it is called ${now} now`)
  const options = program(memoryShell(), '', () => {})
    .commands.find((one) => one.name() === command)!
    .options.map((one) => one.long)
  expect(options).toContain(now)
  expect(options).not.toContain(old)
})

test('others never had another name', () => {
  expect(renamedOption('sweep', '--replications')).toBeNull()
  expect(renamedOption('', '--mine')).toBeNull()
})
