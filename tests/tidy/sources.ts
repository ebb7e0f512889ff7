import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import ts from 'typescript'

/** A file of the project: path from the top with `/`, and its text. */
export interface Source {
  readonly file: string
  readonly text: string
}

export const TOP = join(import.meta.dirname, '..', '..')

const NOT_OURS = new Set(['node_modules', 'dist', 'coverage', 'out'])

/** All files under a folder of the project whose name ends so, in the order of their names; dot folders, installed and built files left out. */
export function filesUnder(folder: string, ending: RegExp): Source[] {
  const found: Source[] = []
  for (const entry of readdirSync(join(TOP, folder), { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))) {
    if (entry.name.startsWith('.') || NOT_OURS.has(entry.name)) continue
    const file = folder === '.' ? entry.name : `${folder}/${entry.name}`
    if (entry.isDirectory()) found.push(...filesUnder(file, ending))
    else if (ending.test(entry.name)) found.push({ file, text: readFileSync(join(TOP, file), 'utf8') })
  }
  return found
}

/** Not kept: the trees of all files would stay in the heap of a process that goes on to hundreds of other tests. */
export function parse({ file, text }: Source, knowsParents = true): ts.SourceFile {
  return ts.createSourceFile(file, text, ts.ScriptTarget.ES2023, knowsParents)
}

export function lineOf(tree: ts.SourceFile, position: number): number {
  return tree.getLineAndCharacterOfPosition(position).line + 1
}

/** This node and every one below it, parents first. */
export function nodesOf(node: ts.Node): ts.Node[] {
  const all: ts.Node[] = []
  const walk = (next: ts.Node): void => {
    all.push(next)
    ts.forEachChild(next, walk)
  }
  walk(node)
  return all
}

/** Tests, what only tests use, and contract suites. */
export function isTest(file: string): boolean {
  return /(\.test(-helper)?|Contract)\.ts$/.test(file) || file.startsWith('tests/')
}
