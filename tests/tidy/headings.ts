import ts from 'typescript'
import { exportsOf } from '../surface/surfaceOf.ts'
import type { Finding } from './finding.ts'
import { lineOf, parse, type Source } from './sources.ts'

/**
 * What is wrong with the headings of an index: blocks of exports, each under one comment line that says what they are for. A sorter that takes no heed of them
 * leaves headings without exports, exports without a heading, or a file whose names stand under several.
 */
export function headingFindings(source: Source): Finding[] {
  const tree = parse(source)
  const findings: Finding[] = []
  const find = (line: number, message: string): void => void findings.push({ file: source.file, line, message })
  const lines = source.text.split('\n')
  const seen = new Set<string>()
  for (const [index, text] of lines.entries()) {
    if (!text.startsWith('//')) continue
    if (!/^export /.test(lines[index + 1] ?? '')) find(index + 1, `the heading "${text.slice(3)}" has no exports under it`)
    if (index > 0 && lines[index - 1] !== '') find(index + 1, `the heading "${text.slice(3)}" has no empty line above it`)
    if (seen.has(text)) find(index + 1, `the heading "${text.slice(3)}" stands twice`)
    seen.add(text)
  }
  for (const statement of tree.statements.filter(ts.isExportDeclaration)) {
    const line = lineOf(tree, statement.getStart())
    const above = lines[line - 2] ?? ''
    if (above === '') find(line, 'a block of exports has no heading')
  }
  const headingOf = new Map<string, string>()
  for (const { heading, name, from } of exportsOf(source.file, source.text)) {
    const first = headingOf.get(from) ?? heading
    headingOf.set(from, first)
    if (first !== heading) find(1, `${name} of ${from} stands under "${heading}", other names of that file under "${first}"`)
  }
  return findings
}
