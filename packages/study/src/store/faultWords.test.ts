import { expect, test } from 'vitest'
import { faultWords } from './faultWords.ts'

const fault = (code: string | undefined, message: string) => Object.assign(new Error(message), code === undefined ? {} : { code })

test('a fault that is known is told in words, another one as the system says it, without its path', () => {
  expect(faultWords(fault('ENOSPC', 'ENOSPC: no space left on device, write'))).toBe('the disk is full')
  expect(faultWords(fault('EMFILE', "EMFILE: too many open files, open '/a'"))).toBe('EMFILE: too many open files')
  expect(faultWords(fault(undefined, 'it stood, and fell'))).toBe('it stood, and fell')
})
