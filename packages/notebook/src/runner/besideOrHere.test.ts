import { expect, test } from 'vitest'
import { besideOrHere } from './besideOrHere.ts'

const files: Readonly<Record<string, string>> = { 'notebooks/data/a.yaml': 'beside', 'b.yaml': 'here' }
const readFile = async (path: string): Promise<string> => files[path] ?? Promise.reject(new Error(`no ${path}`))

test('from the folder of the notebook first, then from here; in neither, the first is missed', async () => {
  expect(await besideOrHere('notebooks/n.ts', 'data/a.yaml', { readFile })).toEqual({ file: 'notebooks/data/a.yaml', text: 'beside' })
  expect(await besideOrHere('notebooks/n.ts', 'b.yaml', { readFile })).toEqual({ file: 'b.yaml', text: 'here' })
  await expect(besideOrHere('notebooks/n.ts', 'c.yaml', { readFile })).rejects.toThrow('no notebooks/c.yaml')
})
