import { parseAllDocuments } from 'yaml'
import { describe, expect, test } from 'vitest'
import { yamlFaults } from './yamlFault.ts'

function faultsOf(text: string): string[] {
  const documents = parseAllDocuments(text, { prettyErrors: false })
  const [first] = 'empty' in documents ? [] : documents
  return yamlFaults(first?.errors ?? [], text).map(({ at, sentence }) => `${at}: ${sentence.message.replace(/^.*?: /, '')}`)
}

describe('each slip once, at its place, in plain words', () => {
  test.each<[string, string, string[]]>([
    ['two colons', 'a: b: c: d\n', ['3: a value that stands here has a colon in it, as if it were a key']],
    ['a brace', 'a: { b: 1\nc: 2\n', ['8: a "{" opens before this place and is never closed']],
    ['a bracket', 'a: [1, 2\nc: 2\n', ['7: a "[" opens before this place and is never closed']],
    ['a quote', 'a: 1\nb: "x\nc: 2\n', ['8: a quote opens and never closes']],
    ['a comma too many', 'a: [1, , 2]\n', ['7: nothing stands before this comma']],
    ['a remark', 'a: "x"#y\n', ['6: a "#" stands right behind something else']],
    ['what nobody thought of', 'a: "\\q"\n', ['4: invalid escape sequence \\q']],
  ])('%s', (_, text, faults) => expect(faultsOf(text)).toEqual(faults))

  test('two slips are two', () => expect(faultsOf('a: b: c\nd: 1\ne: f: g\n')).toHaveLength(2))
})
