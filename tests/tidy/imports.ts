import { posix } from 'node:path'
import ts from 'typescript'
import type { Finding } from './finding.ts'
import { isTest, lineOf, nodesOf, parse, type Source } from './sources.ts'

/** What a package may import: a package of ours, `npm:` one of others, `node:`; with `type:` in front, types only; with `in FOLDER` behind, only there. */
export const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  kernel: [],
  stats: ['npm:seedrandom', 'npm:simple-statistics'],
  line: ['kernel', 'stats'],
  scenario: ['stats', 'line', 'npm:zod', 'npm:yaml'],
  measure: ['stats', 'line', 'scenario', 'npm:csv-parse', 'npm:fflate', 'npm:saxes', 'npm:simple-statistics'],
  study: ['stats', 'line', 'node:', 'npm:bullmq', 'npm:ioredis'],
  decide: ['stats', 'line', 'scenario'],
  charts: ['type:stats', 'type:line', 'type:study', 'type:npm:vega-lite'],
  notebook: [
    'stats',
    'line',
    'scenario',
    'measure',
    'study',
    'decide',
    'charts',
    'node:',
    'npm:acorn',
    'npm:@resvg/resvg-js',
    'npm:pptxgenjs',
    'npm:chokidar',
    'npm:hono',
    'npm:@hono/node-server',
    'npm:markdown-it',
    'npm:esbuild',
    'npm:vega',
    'npm:vega-lite',
    'npm:vega-embed',
    'npm:vega-interpreter',
  ],
  cli: ['line', 'scenario', 'measure', 'study', 'decide', 'charts', 'notebook', 'node:', 'npm:commander', 'npm:tsx'],
}

/** Doors of a package beside its index: `@loopwright/stats/fit` is `packages/stats/src/fit/index.ts`. */
export const DOORS: Readonly<Record<string, readonly string[]>> = {
  stats: ['fit', 'procedures', 'special', 'worlds'],
  line: ['bounds', 'check'],
  scenario: ['text'],
  study: ['change', 'compare', 'machine', 'queue', 'trials'],
  decide: ['acceptance', 'screening'],
  charts: ['decision', 'draw', 'measured', 'table'],
  notebook: ['data', 'decision', 'machine', 'trace'],
}

/** Names that only these packages may take: nothing but a study runs the engine. */
const ONLY_FOR: Readonly<Record<string, readonly string[]>> = {
  simulate: ['study'],
  createSimulator: ['study'],
}

/** Files that run in a browser, or must be able to: nothing of Node there. And of study only the worker pool, the store and the queue may know Node. */
const WITHOUT_NODE: readonly RegExp[] = [
  /^packages\/notebook\/src\/(page|browser|live|replay)\//,
  /^packages\/study\/src\/(?!runs\/pool\.ts$|runs\/withMachine\.ts$|runs\/worker\.ts$|store\/|queue\/)/,
]

/** Beside the package's own imports a test may use these. */
const TESTS_MAY_IMPORT = ['node:', 'npm:vitest', 'npm:fast-check', 'npm:ajv', 'npm:financial']

/** What tests of several packages share: small lines, lines made up at random. */
const SHARED_BY_TESTS = 'tests/'

interface Import {
  readonly from: string
  readonly typeOnly: boolean
  readonly line: number
  /** what is taken by name */
  readonly names: readonly string[]
}

const known = new WeakMap<Source, Import[]>()

/** below a statement only a call, a type or a declared module imports, and all are written so, as is a comment before a name */
const ANYWHERE = /\bimport\s*[(/]|\bfrom\s*\/|\bdeclare\b/

/** The text up to the last name that could be one of a file to import: what follows imports nothing, and is most of it. */
function head(text: string): string {
  const last = [...text.matchAll(/\b(?:from|import)\s*(['"])[^'"\n]*\1/g)].at(-1)
  return last === undefined ? '' : text.slice(0, last.index + last[0].length)
}

export function importsOf(source: Source): Import[] {
  const before = known.get(source)
  if (before !== undefined) return before
  const whole = ANYWHERE.test(source.text)
  const tree = parse(whole ? source : { ...source, text: head(source.text) }, false)
  const found: Import[] = []
  known.set(source, found)
  const nodes = whole ? nodesOf(tree) : tree.statements
  for (const node of nodes) {
    if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier)) {
      found.push({
        from: node.moduleSpecifier.text,
        typeOnly: node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword,
        line: lineOf(tree, node.getStart(tree)),
        names: namesOf(node.importClause?.namedBindings),
      })
    } else if (ts.isExportDeclaration(node) && node.moduleSpecifier && ts.isStringLiteral(node.moduleSpecifier)) {
      found.push({
        from: node.moduleSpecifier.text,
        typeOnly: node.isTypeOnly,
        line: lineOf(tree, node.getStart(tree)),
        names: namesOf(node.exportClause),
      })
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      const [first] = node.arguments
      if (first && ts.isStringLiteral(first))
        found.push({ from: first.text, typeOnly: false, line: lineOf(tree, node.getStart(tree)), names: [] })
    } else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument) && ts.isStringLiteral(node.argument.literal)) {
      found.push({ from: node.argument.literal.text, typeOnly: true, line: lineOf(tree, node.getStart(tree)), names: [] })
    }
  }
  return found
}

function namesOf(bindings: ts.NamedImportBindings | ts.NamedExportBindings | undefined): string[] {
  return bindings !== undefined && (ts.isNamedImports(bindings) || ts.isNamedExports(bindings))
    ? bindings.elements.map((element) => (element.propertyName ?? element.name).text)
    : []
}

function packageName(from: string): string {
  const parts = from.split('/')
  return from.startsWith('@') ? parts.slice(0, 2).join('/') : parts[0]!
}

/** All that a package stands on, values too: what its tests may use to make what they hand over. */
function below(name: string): string[] {
  const direct = (MAY_IMPORT[name] ?? []).map((rule) => rule.replace(/^type:/, ''))
  return [...new Set([...direct, ...direct.flatMap((rule) => below(rule).filter((one) => one in MAY_IMPORT))])]
}

/** The import matrix, for one file of packages/X/src. */
export function importFindings(source: Source): Finding[] {
  const self = /^packages\/([^/]+)\/src\//.exec(source.file)?.[1]
  if (self === undefined) return []
  const rules = MAY_IMPORT[self]
  if (rules === undefined)
    return [{ file: source.file, line: 1, message: `package ${self} is not in the import matrix; add its row to tests/tidy/imports.ts` }]
  const test = isTest(source.file)
  const allowed = test ? [...below(self), ...TESTS_MAY_IMPORT] : rules
  const may = allowed.length === 0 ? 'nothing' : allowed.join(', ')
  const findings: Finding[] = []
  for (const { from, typeOnly, line, names } of importsOf(source)) {
    const find = (message: string) => findings.push({ file: source.file, line, message })
    // chosen by the package's own "imports": a file of its own all the same
    if (from.startsWith('#')) continue
    if (from.startsWith('.')) {
      const target = posix.join(posix.dirname(source.file), from)
      if (test && target.startsWith(SHARED_BY_TESTS)) continue
      if (!target.startsWith(`packages/${self}/`)) find(`the import of "${from}" leaves the package, use @loopwright/…`)
      else if (!/\.(ts|json)$/.test(from)) find(`"${from}" has no ending, use "${from}.ts"`)
      continue
    }
    const ours = /^@loopwright\/([^/]+)(?:\/(.*))?$/.exec(from)
    const doors = DOORS[ours?.[1] ?? ''] ?? []
    if (ours?.[2] !== undefined && !doors.includes(ours[2])) {
      find(
        `the deep path "${from}" is banned, use ${[`@loopwright/${ours[1]}`, ...doors.map((door) => `@loopwright/${ours[1]}/${door}`)].join(' or ')}`,
      )
      continue
    }
    if (!test && ours)
      for (const name of names.filter((each) => ONLY_FOR[each]?.includes(self) === false))
        find(`${name} is for ${ONLY_FOR[name]!.join(', ')} alone, use a study`)
    if (ours?.[1] === self) {
      find(`${self} imports itself by name, use a relative path`)
      continue
    }
    const name = ours ? ours[1]! : from.startsWith('node:') ? 'node:' : `npm:${packageName(from)}`
    if (allowed.includes(name)) {
      if (name === 'node:' && !test && WITHOUT_NODE.some((place) => place.test(source.file)))
        find(`${from} is banned here, use effects that are passed in`)
    } else if (allowed.includes(`type:${name}`)) {
      if (!typeOnly) find(`${self} may import only types from ${from}, use import type`)
    } else find(`${self} may not import ${from}; it may import ${may}`)
  }
  return findings
}

/** Tests that are imported: they would be declared anew in the file that asks for what stands beside them. */
export const testImportFindings = (source: Source): Finding[] =>
  (source.text.includes('.test.ts') ? importsOf(source) : [])
    .filter(({ from }) => from.endsWith('.test.ts'))
    .map(({ from, line }) => ({
      file: source.file,
      line,
      message: `the import of the test "${from}" is banned, use a file of tests/helpers`,
    }))

/** Each file with the files of its own package that it takes anything from, types too. */
function imported(sources: readonly Source[]): Map<string, string[]> {
  return new Map(
    sources.map((source) => [
      source.file,
      importsOf(source).flatMap(({ from }) => (from.startsWith('.') ? [posix.join(posix.dirname(source.file), from)] : [])),
    ]),
  )
}

/** Circles of imports between files, of types too: each is told once, at the file that comes first by name. `tied`: files that may still be in one. */
export function circleFindings(sources: readonly Source[], tied: readonly string[] = []): Finding[] {
  const next = imported(sources)
  const findings: Finding[] = []
  const done = new Set<string>()
  const walk = (file: string, path: string[]): void => {
    const start = path.indexOf(file)
    if (start >= 0) {
      const circle = path.slice(start)
      if (circle.every((one) => tied.includes(one))) return
      findings.push({
        file: [...circle].sort()[0]!,
        line: 1,
        message: `a circle of imports is banned, use a third file: ${[...circle, file].join(' → ')}`,
      })
      return
    }
    if (done.has(file)) return
    for (const to of next.get(file) ?? []) walk(to, [...path, file])
    done.add(file)
  }
  for (const file of next.keys()) walk(file, [])
  return findings
}
