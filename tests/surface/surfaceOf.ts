import { readFileSync } from 'node:fs'
import { join, posix } from 'node:path'
import ts from 'typescript'
import { parse, TOP } from '../tidy/sources.ts'

/** Longest value kept: a long table is told by its beginning. Types and signatures are kept whole. */
const VALUE_WIDTH = 160

/** A name that an index gives, under the heading above it. */
export interface Exported {
  readonly heading: string
  readonly name: string
  /** what it is called where it comes from */
  readonly inner: string
  /** where that is; null: another package */
  readonly file: string | null
  /** of that package */
  readonly from: string
}

/**
 * What a door exports by name, in its order. A heading is the last line of comment above a block of exports.
 *
 * @param text  of the index; default: as the file stands
 */
export function exportsOf(index: string, text: string | null = null): Exported[] {
  const tree = text === null ? read(index) : parse({ file: index, text })
  let heading = ''
  return tree.statements.flatMap((statement) => {
    const above = ts.getLeadingCommentRanges(tree.text, statement.getFullStart())?.at(-1)
    if (above) heading = tree.text.slice(above.pos, above.end).replace(/^\/\/ /, '')
    if (!ts.isExportDeclaration(statement) || !statement.exportClause || !ts.isNamedExports(statement.exportClause)) return []
    const from = statement.moduleSpecifier && ts.isStringLiteral(statement.moduleSpecifier) ? statement.moduleSpecifier.text : ''
    const file = from.startsWith('.') ? posix.join(posix.dirname(index), from) : null
    return statement.exportClause.elements.map(({ name, propertyName }) => ({
      heading,
      name: name.text,
      inner: (propertyName ?? name).text,
      file,
      from,
    }))
  })
}

/**
 * The public names of a door of a package under their headings, one line each, `name: declaration without its body`, in the order of its index.
 *
 * @param index  path of the index from the top of the project
 */
export function surfaceOf(index: string): string[] {
  const lines: string[] = []
  let under = ''
  for (const { heading, name, inner, file, from } of exportsOf(index)) {
    if (heading !== under) lines.push(`# ${heading}`)
    under = heading
    lines.push(`${name}: ${file === null ? `${inner} of ${from}` : declaration(file, inner)}`)
  }
  const others = read(index).statements.filter((statement) => !ts.isExportDeclaration(statement))
  return [...lines, ...others.map((statement) => `index: ${shorten(statement.getText())} not found: an index only exports by name`)]
}

const trees = new Map<string, ts.SourceFile>()

/** A process goes on to other tests, which need none of them. */
export const forgetTrees = (): void => trees.clear()

export function read(file: string): ts.SourceFile {
  const known = trees.get(file)
  if (known) return known
  const tree = parse({ file, text: readFileSync(join(TOP, file), 'utf8') })
  trees.set(file, tree)
  return tree
}

function declaration(file: string, name: string): string {
  const tree = read(file)
  for (const statement of tree.statements) {
    if (ts.isVariableStatement(statement)) {
      const found = statement.declarationList.declarations.find((d) => d.name.getText() === name)
      if (found) return constant(tree, found)
    } else if (ts.isFunctionDeclaration(statement) && statement.name?.text === name) {
      const parameters = statement.parameters.map((parameter) => print(tree, parameter)).join(', ')
      const generics = statement.typeParameters ? `<${statement.typeParameters.map((p) => print(tree, p)).join(', ')}>` : ''
      return shorten(
        `function${generics}(${parameters}): ${statement.type ? print(tree, statement.type) : 'without a return type, not found'}`,
      )
    } else if (ts.isClassDeclaration(statement) && statement.name?.text === name) {
      const members = statement.members.filter((m) => !isPrivate(m)).map((m) => memberOf(tree, m))
      return shorten(`class { ${members.join('; ')} }`)
    } else if ((ts.isInterfaceDeclaration(statement) || ts.isTypeAliasDeclaration(statement)) && statement.name.text === name) {
      return shorten(print(tree, statement).replace(/^export /, ''))
    } else if (ts.isExportDeclaration(statement) && statement.exportClause && ts.isNamedExports(statement.exportClause)) {
      const found = statement.exportClause.elements.find((element) => element.name.text === name)
      const from = statement.moduleSpecifier
      if (found && from && ts.isStringLiteral(from)) {
        const inner = (found.propertyName ?? found.name).text
        return from.text.startsWith('.') ? declaration(posix.join(posix.dirname(file), from.text), inner) : `${inner} of ${from.text}`
      }
    }
  }
  return `not found in ${file}`
}

/** An arrow function shows its signature alone, a value its beginning; how the formatter breaks its lines does not show. */
function constant(tree: ts.SourceFile, { name, type, initializer }: ts.VariableDeclaration): string {
  const head = `const ${name.getText()}${type ? `: ${print(tree, type)}` : ''}`
  if (!initializer) return head
  if (!ts.isArrowFunction(initializer)) return shorten(`${head} = ${print(tree, initializer)}`, VALUE_WIDTH)
  const whole = print(tree, initializer)
  return shorten(`${head} = ${whole.slice(0, whole.length - print(tree, initializer.body).length).trim()}`)
}

function isPrivate(member: ts.ClassElement): boolean {
  const hidden = ts.canHaveModifiers(member) && ts.getModifiers(member)?.some((m) => m.kind === ts.SyntaxKind.PrivateKeyword)
  return hidden === true || (member.name !== undefined && ts.isPrivateIdentifier(member.name))
}

function memberOf(tree: ts.SourceFile, member: ts.ClassElement): string {
  const text = print(tree, member)
  if (ts.isMethodDeclaration(member) || ts.isConstructorDeclaration(member) || ts.isGetAccessor(member)) {
    return text.slice(0, text.length - (member.body ? print(tree, member.body).length : 0)).trim()
  }
  return text.replace(/;$/, '')
}

const printer = ts.createPrinter({ removeComments: true })

function print(tree: ts.SourceFile, node: ts.Node): string {
  return printer
    .printNode(ts.EmitHint.Unspecified, node, tree)
    .replaceAll(/\s+/g, ' ')
    .replaceAll(/,? ([\])])/g, '$1')
    .replaceAll(/([[(]) /g, '$1')
}

function shorten(text: string, width = Number.POSITIVE_INFINITY): string {
  const line = text.replaceAll(/\s+/g, ' ').trim()
  return line.length <= width ? line : `${line.slice(0, width)} …`
}
