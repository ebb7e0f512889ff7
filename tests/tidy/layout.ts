import { posix } from 'node:path'
import ts from 'typescript'
import type { Finding } from './finding.ts'
import { isTest, parse, type Source } from './sources.ts'

/** What may stand at the top, beside dot files. */
export const TOP_LEVEL = [
  'DEVELOPERS.md',
  'LICENSE',
  'README.md',
  'biome.json',
  'notebooks',
  'package-lock.json',
  'package.json',
  'packages',
  'scenarios',
  'tests',
  'tsconfig.json',
  'vitest.config.ts',
]

/** `ignored`: what .gitignore names; made by running, no part of the project. */
export function topLevelFindings(entries: readonly string[], ignored: readonly string[]): Finding[] {
  const there = entries.filter((name) => !name.startsWith('.') && !ignored.includes(name))
  return [
    ...there
      .filter((name) => !TOP_LEVEL.includes(name))
      .map((name) => ({ file: name, line: 1, message: 'a new name at the top is banned, use packages, scenarios, notebooks or tests' })),
    ...TOP_LEVEL.filter((name) => !there.includes(name)).map((name) => ({
      file: name,
      line: 1,
      message: 'is missing at the top, use git to bring it back',
    })),
  ]
}

const LINES_MAX = 300

/** A file longer than 300 lines says in its first 15 why. */
export function lengthFindings(source: Source): Finding[] {
  const lines = source.text.split('\n')
  if (lines.length <= LINES_MAX + 1 || /over 300 lines because/i.test(lines.slice(0, 15).join(' '))) return []
  return [
    {
      file: source.file,
      line: LINES_MAX + 1,
      message: 'a file over 300 lines is banned, use two, or say "over 300 lines because …" in its header',
    },
  ]
}

/** More than a reader sees at a glance are two rooms. */
const SOURCES_MAX = 25

/** A folder of a package's source that holds too many files; tests are not counted. */
export function crowdFindings(sources: readonly Source[]): Finding[] {
  const held = new Map<string, number>()
  for (const { file } of sources) {
    if (!/^packages\/[^/]+\/src\//.test(file) || isTest(file)) continue
    const folder = posix.dirname(file)
    held.set(folder, (held.get(folder) ?? 0) + 1)
  }
  return [...held]
    .filter(([, count]) => count > SOURCES_MAX)
    .map(([file, count]) => ({
      file,
      line: 1,
      message: `a folder of ${count} sources is banned, use ${SOURCES_MAX} at most and rooms by noun`,
    }))
}

/** Files without a test of their own beside them, and what tests them. Types and index files need none. */
export type Untested = Readonly<Record<string, string>>

export function besideFindings(sources: readonly Source[], untested: Untested): Finding[] {
  const files = new Set(sources.map((source) => source.file))
  const findings: Finding[] = []
  const excused = new Set<string>()
  for (const source of sources) {
    if (!/^packages\/[^/]+\/src\//.test(source.file) || isTest(source.file) || /(^|\/)index\.ts$/.test(source.file)) continue
    if (files.has(source.file.replace(/\.ts$/, '.test.ts')) || isTypesOnly(source)) continue
    const row = Object.keys(untested).find((key) => (key.endsWith('/') ? source.file.startsWith(key) : source.file === key))
    if (row === undefined)
      findings.push({
        file: source.file,
        line: 1,
        message: `has no test beside it, use ${source.file.replace(/\.ts$/, '.test.ts')} or a row with a reason in tests/tidy/untested.ts`,
      })
    else excused.add(row)
  }
  for (const key of Object.keys(untested)) {
    if (!excused.has(key))
      findings.push({ file: key, line: 1, message: 'is excused from a test beside it and need not be, use the row no more' })
  }
  return findings
}

/** True where nothing is left when the types are taken away. */
function isTypesOnly(source: Source): boolean {
  return parse(source).statements.every(
    (statement) =>
      ts.isInterfaceDeclaration(statement) ||
      ts.isTypeAliasDeclaration(statement) ||
      (ts.isImportDeclaration(statement) && statement.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword) ||
      (ts.isExportDeclaration(statement) && statement.isTypeOnly),
  )
}
