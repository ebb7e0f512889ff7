import { expect, test } from 'vitest'
import { signText } from './signText.ts'

test.each([
  ['S5', 'S5'],
  ['S12', 'S12'],
  ['fitLeft', 'fL'],
  ['fitRight', 'fR'],
  ['check', 'che'],
  ['packerNo14', 'pN1'],
])('%s stands on its sign as %s', (key, text) => expect(signText(key)).toBe(text))
