import ts from 'typescript'
import type { Finding } from './finding.ts'
import { lineOf, nodesOf, parse, type Source } from './sources.ts'

/** Verdicts that belong to a licensed person. "safety" and `'unsafe-inline'` are other words; a word in quotes is talked about, not said. */
const VERDICT = /(?<![-\w"“`'])(safe|unsafe|safely|compliant|non-compliant|approved|certified|meets the standards?)(?![-\w"”`'])/i
const SPELT = /(?<![-\w])(safe|unsafe|safely|compliant|non-compliant|approved|certified|meets the standards?)(?![-\w])/i
const CODED = /\\[xu]/
const INSTEAD = '"above guidance value", "within guidance value, assumptions: …" or "not checked"'

/** In what people read: string literals and templates of the packages, and all of a document. */
export function verdictFindings(source: Source): Finding[] {
  if (/\.(md|ya?ml)$/.test(source.file)) {
    return source.text.split('\n').flatMap((text, index) => verdict(source.file, index + 1, text))
  }
  // as a word of the text, its escapes taken away, or spelt by codes
  if (!SPELT.test(source.text.replace(/\\[\n\r]|\\(?![nrtvbf0])/g, '').replace(/\\./g, ' ')) && !CODED.test(source.text)) return []
  const tree = parse(source)
  return nodesOf(tree).flatMap((node) => {
    const said =
      ts.isStringLiteral(node) ||
      ts.isNoSubstitutionTemplateLiteral(node) ||
      ts.isTemplateHead(node) ||
      ts.isTemplateMiddle(node) ||
      ts.isTemplateTail(node)
    return said ? verdict(source.file, lineOf(tree, node.getStart()), node.text) : []
  })
}

function verdict(file: string, line: number, text: string): Finding[] {
  const word = VERDICT.exec(text)?.[1]
  return word === undefined ? [] : [{ file, line, message: `"${word}" as a verdict is banned, use ${INSTEAD}` }]
}

/** Package hosts belong to the machine that installs, not to the project. */
export function hostFindings(source: Source): Finding[] {
  const findings: Finding[] = []
  source.text.split('\n').forEach((text, index) => {
    if (/"resolved":\s*"https?:/.test(text))
      findings.push({
        file: source.file,
        line: index + 1,
        message: 'an address of a package host is banned, use omit-lockfile-registry-resolved',
      })
    else if (/\bregistry\s*=|https?:\/\/(registry|npm)\.|npm\.pkg\./.test(text))
      findings.push({ file: source.file, line: index + 1, message: "a package host is banned, use the machine's own settings" })
  })
  return findings
}
