import { readFileSync } from 'node:fs'
import { join, posix } from 'node:path'
import ts from 'typescript'
import { parse, TOP } from '../tidy/sources.ts'

/** Longest value kept: a long table is told by its beginning. Types and signatures are kept whole. */
const VALUE_WIDTH = 160

/**
 * The public names of a package, one line each, `name: declaration without its body`, sorted.
 *
 * @param index  path of the index from the top of the project
 */
export function surfaceOf(index: string): string[] {
  const lines: string[] = []
  for (const statement of read(index).statements) {
    if (!ts.isExportDeclaration(statement)) {
      lines.push(`index: ${shorten(statement.getText())} not found: an index only exports by name`)
      continue
    }
    const from = statement.moduleSpecifier && ts.isStringLiteral(statement.moduleSpecifier) ? statement.moduleSpecifier.text : ''
    if (statement.exportClause === undefined || !ts.isNamedExports(statement.exportClause)) continue
    for (const { name, propertyName } of statement.exportClause.elements) {
      const inner = (propertyName ?? name).text
      lines.push(
        `${name.text}: ${from.startsWith('.') ? declaration(posix.join(posix.dirname(index), from), inner) : `${inner} of ${from}`}`,
      )
    }
  }
  return lines.sort()
}

const trees = new Map<string, ts.SourceFile>()

function read(file: string): ts.SourceFile {
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
      if (found) return shorten(`const ${print(tree, found)}`, VALUE_WIDTH)
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
  return printer.printNode(ts.EmitHint.Unspecified, node, tree).replaceAll(/\s+/g, ' ')
}

function shorten(text: string, width = Number.POSITIVE_INFINITY): string {
  const line = text.replaceAll(/\s+/g, ' ').trim()
  return line.length <= width ? line : `${line.slice(0, width)} …`
}
