import ts from 'typescript'
import type { Finding } from './finding.ts'
import { isTest, lineOf, nodesOf, parse, type Source } from './sources.ts'

/** Names that hide a dependency on the machine, and what to use instead. A dot means that member only. */
const BANNED_NAMES: Readonly<Record<string, string>> = {
  'Math.random': 'a named stream of stats',
  'Date.now': 'the effect `now` that is passed in',
  performance: 'the effect `now` that is passed in',
  console: 'the effect `log` or `write` that is passed in',
  process: 'effects that are passed in',
}

/** Where a banned name is right, and why. A row that is no longer needed is a finding itself. */
export const MAY_USE: readonly { readonly file: RegExp; readonly names: readonly string[]; readonly why: string }[] = [
  {
    file: /^packages\/cli\/src\//,
    names: ['process', 'performance'],
    why: 'the command line is where effects are made',
  },
  { file: /^tests\/bench\//, names: ['process', 'console'], why: 'a benchmark reads a clock of the process and prints' },
  { file: /^packages\/study\/src\/queue\/aloneProcess\.ts$/, names: ['process'], why: 'it is a process, and hears and answers as one' },
  { file: /^tests\/faults\//, names: ['process', 'performance'], why: 'faults strike by the clock, and their log is printed' },
  { file: /^tests\/soak\//, names: ['process', 'performance'], why: 'a soak lasts as long as it is told to, and prints' },
  { file: /^tests\/intervals\//, names: ['process'], why: 'long studies are shared by processes, and printed' },
  { file: /^tests\/fuzz\//, names: ['process', 'performance'], why: 'a long try lasts as long as it is told to, and prints' },
  { file: /^tests\/proof\//, names: ['process', 'performance'], why: 'a proof tells how long it takes' },
  { file: /^(tests\/.*|packages\/[^/]+\/src\/.*\.test)\.ts$/, names: ['process'], why: 'tests start commands and read CI and NO_COLOR' },
]

interface Use {
  readonly file: string
  readonly line: number
  readonly name: string
}

/** what a text has in it that takes a banned name, however it is written */
const MAY_NAME = [/\\u|\bMath\b[\s\S]{0,200}?\brandom\b|\bDate\b[\s\S]{0,200}?\bnow\b/, /\b(performance|console|process)\b/]

const known = new WeakMap<Source, Use[]>()

function usesOf(source: Source): Use[] {
  const before = known.get(source)
  if (before !== undefined) return before
  const tree = MAY_NAME.some((name) => name.test(source.text)) ? parse(source) : null
  const uses = (tree === null ? [] : nodesOf(tree)).flatMap((node) => {
    const name = bannedName(node)
    return name === undefined ? [] : [{ file: source.file, line: lineOf(tree!, node.getStart()), name }]
  })
  known.set(source, uses)
  return uses
}

export function banFindings(source: Source): Finding[] {
  return usesOf(source)
    .filter((use) => !MAY_USE.some((row) => row.file.test(use.file) && row.names.includes(use.name)))
    .map(({ file, line, name }) => ({ file, line, message: `${name} is banned, use ${BANNED_NAMES[name]}` }))
}

/** Permissions that nothing uses any more. */
export function idlePermissions(sources: readonly Source[], rows = MAY_USE): Finding[] {
  const uses = sources.flatMap(usesOf)
  return rows.flatMap((row) =>
    row.names
      .filter((name) => !uses.some((use) => use.name === name && row.file.test(use.file)))
      .map((name) => ({
        file: 'tests/tidy/bans.ts',
        line: 1,
        message: `leave for ${name} in ${row.file} is used by nothing, use the row no more`,
      })),
  )
}

const LAST_NAMES = new Set(Object.keys(BANNED_NAMES).map((name) => name.split('.').at(-1)!))

function bannedName(node: ts.Node): string | undefined {
  if (!ts.isIdentifier(node) || !LAST_NAMES.has(node.text)) return undefined
  const { parent } = node
  if (ts.isPropertyAccessExpression(parent) && parent.name === node) {
    const dotted = `${parent.expression.getText()}.${node.text}`.replace(/^globalThis\./, '')
    return Object.hasOwn(BANNED_NAMES, dotted) ? dotted : undefined
  }
  if (!Object.hasOwn(BANNED_NAMES, node.text)) return undefined
  const isJustAName =
    (ts.isPropertyAssignment(parent) && parent.name === node) ||
    (ts.isPropertySignature(parent) && parent.name === node) ||
    (ts.isMethodSignature(parent) && parent.name === node) ||
    (ts.isParameter(parent) && parent.name === node) ||
    (ts.isBindingElement(parent) && parent.name === node)
  return isJustAName ? undefined : node.text
}

/** `export *`: an index says by name what it gives. */
export function exportAllFindings(source: Source): Finding[] {
  if (!/\bexport\s*(type\b|\/\*.*?\*\/|\s)*\*/.test(source.text)) return []
  const tree = parse(source)
  return nodesOf(tree)
    .filter((node) => ts.isExportDeclaration(node) && (node.exportClause === undefined || ts.isNamespaceExport(node.exportClause)))
    .map((node) => ({
      file: source.file,
      line: lineOf(tree, node.getStart()),
      message: '`export *` is banned, use explicit names under a heading',
    }))
}

/** a member of such a name, a comment before it or not, however it is written */
const MAY_SKIP = /\.(?:\s|\/\*[^*]*\*\/|\/\/.*\n)*(only|skip|skipIf|todo|runIf|fails)\b|\\u/
const RUNNERS = new Set(['test', 'it', 'describe', 'suite'])

/** `.only`, and a skip without a comment that says why on its line or the line above. */
export function skipFindings(source: Source): Finding[] {
  if (!isTest(source.file) || !MAY_SKIP.test(source.text)) return []
  const tree = parse(source)
  const lines = source.text.split('\n')
  const findings: Finding[] = []
  for (const node of nodesOf(tree)) {
    if (!ts.isPropertyAccessExpression(node) || !RUNNERS.has(rootName(node.expression))) continue
    const line = lineOf(tree, node.name.getStart())
    if (node.name.text === 'only') findings.push({ file: source.file, line, message: '`.only` is banned, use `vitest -t`' })
    if (!['skip', 'skipIf', 'todo', 'runIf', 'fails'].includes(node.name.text)) continue
    const said = [lines[line - 1], lines[line - 2]].some((text) => text?.includes('// skipped because '))
    if (!said)
      findings.push({
        file: source.file,
        line,
        message: `\`.${node.name.text}\` without a reason is banned, use a comment "// skipped because …"`,
      })
  }
  return findings
}

function rootName(node: ts.Expression): string {
  if (ts.isPropertyAccessExpression(node) || ts.isCallExpression(node)) return rootName(node.expression)
  return ts.isIdentifier(node) ? node.text : ''
}

const MARK = new RegExp(`(?://|/?\\*|<!--|#).*\\b(${['TO' + 'DO', 'FIX' + 'ME', 'X' + 'XX', 'HA' + 'CK'].join('|')})\\b`)

/** Marks of unfinished work, in comments only. */
export function unfinishedFindings(source: Source): Finding[] {
  const findings: Finding[] = []
  source.text.split('\n').forEach((text, index) => {
    const mark = MARK.exec(text)?.[1]
    if (mark)
      findings.push({
        file: source.file,
        line: index + 1,
        message: `${mark} is banned, use a finished sentence in the docs or finish the work`,
      })
  })
  return findings
}
