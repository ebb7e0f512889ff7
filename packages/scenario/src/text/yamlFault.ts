/** What is wrong with a text that is not YAML, in the words of somebody who has never read its rules. */
import type { YAMLError } from 'yaml'
import * as say from '../problems/messages.ts'

/** A fault of the text, and where it stands in it. */
export interface YamlFault {
  readonly at: number
  readonly length: number
  readonly sentence: say.Sentence
}

/** of the parser; one slip often causes several */
const FINDINGS_MAX = 10

/**
 * Findings of the parser as sentences of ours; of those that one slip causes only the first.
 *
 * @example yamlFaults([], '') // => []
 */
export function yamlFaults(findings: readonly Pick<YAMLError, 'code' | 'message' | 'pos'>[], text: string): YamlFault[] {
  const faults: YamlFault[] = []
  const lineOf = (at: number): number => text.slice(0, at).split('\n').length
  let line = Number.NaN
  for (const { code, message, pos } of findings.slice(0, FINDINGS_MAX)) {
    // two findings at one place: the second one knows that the value goes on in the next line
    const twin = findings.some((other) => other.code === 'MULTILINE_IMPLICIT_KEY' && other.pos[0] === pos[0])
    const open = /(?:^|and )(?:must )?end with a ([}\]])/.exec(message)?.[1]
    const quote = /^Missing closing (.)quote/.exec(message)?.[1]
    const at = open !== undefined ? beforeBlank(text, pos[0]) : quote !== undefined ? oddQuote(text, quote, pos[0]) : pos[0]
    const here = lineOf(at)
    const follows = here === line || (here === line + 1 && /same column/.test(message))
    line = here
    if (follows) continue
    const sentence = open === undefined ? sentenceOf(code, message, twin) : notClosed(open)
    faults.push({ at, length: open === undefined ? pos[1] - pos[0] : 1, sentence })
  }
  return faults
}

/** The quote of the first line that has an odd number of them: most likely the one that is not closed. */
function oddQuote(text: string, quote: string, end: number): number {
  let start = 0
  for (const line of text.split('\n')) {
    if (line.split(quote).length % 2 === 0) return start + line.indexOf(quote)
    start += line.length + 1
  }
  return end
}

/** The last sign before a place that is no blank. */
const beforeBlank = (text: string, at: number): number => Math.max(0, text.slice(0, at).trimEnd().length - 1)

const notClosed = (sign: string): say.Sentence =>
  say.badYaml(`a "${sign === '}' ? '{' : '['}" opens before this place and is never closed`, `close it with "${sign}"`)

function sentenceOf(code: YAMLError['code'], message: string, goesOn: boolean): say.Sentence {
  if (code === 'TAB_AS_INDENT') return say.badYaml('a tab stands in the indentation', 'use blanks instead of the tab')
  if (goesOn && code === 'BLOCK_AS_IMPLICIT_KEY')
    return say.badYaml(
      'this value goes on in the next line, which is indented more deeply',
      'begin each key in the column of the one before it',
    )
  if (code === 'BLOCK_AS_IMPLICIT_KEY')
    return say.badYaml(
      'a value that stands here has a colon in it, as if it were a key',
      'put a text with a colon in quotes; put several keys of one line in braces; a key ends with its colon',
    )
  if (code === 'MULTILINE_IMPLICIT_KEY' || /Implicit map keys need/.test(message))
    return say.badYaml('a key begins here, and no colon ends it', 'write the key, a colon, a blank, and its value')
  if (code === 'BLOCK_IN_FLOW' || /^Missing ,/.test(message))
    return say.badYaml('no comma parts this from what stands before it', 'within braces and brackets put a comma before each further part')
  if (/^Missing space after :/.test(message)) return say.badYaml('no blank stands behind a colon', 'put a blank behind it')
  if (/^Missing closing/.test(message)) return say.badYaml('a quote opens and never closes', 'close it behind the text')
  if (/^Comments must/.test(message)) return say.badYaml('a "#" stands right behind something else', 'put a blank before the remark')
  if (/same column/.test(message))
    return say.badYaml('this line does not begin in the column of those before it', 'indent all parts of one set alike, with blanks')
  if (/at node end/.test(message))
    return say.badYaml(
      'something stands behind the end of a value',
      'put a text that holds quotes in quotes of the other kind, or remove what is too much',
    )
  if (/^Unexpected , /.test(message)) return say.badYaml('nothing stands before this comma', 'remove the comma')
  if (code === 'BAD_SCALAR_START') return say.badYaml('a text cannot begin with this sign', 'put the text in quotes')
  return say.badYaml(own(message), 'check indentation, brackets and quotes around this place')
}

/** The parser's own words, without its second sentence and in small letters. */
function own(message: string): string {
  const first = message.split('\n')[0]!.slice(0, 120)
  return first.charAt(0).toLowerCase() + first.slice(1)
}
