import { posix } from 'node:path'
import ts from 'typescript'
import { type Exported, exportsOf, read } from './surfaceOf.ts'

/** What is said of a public name where it is declared. */
export interface NameDocs {
  readonly name: string
  readonly kind: 'function' | 'value' | 'type'
  readonly file: string
  /** the first sentence is there */
  readonly told: boolean
  readonly example: boolean
}

/** What is said of each public name of a door, but for those that come from another package. */
export function docsOf(index: string): NameDocs[] {
  return exportsOf(index).flatMap((exported) => {
    const found = declared(exported)
    if (found === null) return []
    const { file, node, kind } = found
    const docs = ts.getJSDocCommentsAndTags(node).filter(ts.isJSDoc)
    const told = docs.some(({ comment }) => comment !== undefined && ts.getTextOfJSDocComment(comment)!.trim() !== '')
    const example = docs.some(({ tags }) => tags?.some(({ tagName }) => tagName.text === 'example') === true)
    return [{ name: exported.name, kind, file, told, example }]
  })
}

interface Declared {
  readonly file: string
  readonly node: ts.Node
  readonly kind: NameDocs['kind']
}

/** Follows a name that a file only hands on. */
function declared({ inner, file }: Pick<Exported, 'inner' | 'file'>): Declared | null {
  if (file === null) return null
  for (const statement of read(file).statements) {
    if (ts.isVariableStatement(statement)) {
      const one = statement.declarationList.declarations.find((each) => each.name.getText() === inner)
      const arrow = one?.initializer !== undefined && (ts.isArrowFunction(one.initializer) || ts.isFunctionExpression(one.initializer))
      if (one) return { file, node: statement, kind: arrow ? 'function' : 'value' }
    } else if (ts.isFunctionDeclaration(statement) && statement.name?.text === inner) return { file, node: statement, kind: 'function' }
    else if (ts.isClassDeclaration(statement) && statement.name?.text === inner) return { file, node: statement, kind: 'value' }
    else if ((ts.isInterfaceDeclaration(statement) || ts.isTypeAliasDeclaration(statement)) && statement.name.text === inner)
      return { file, node: statement, kind: 'type' }
    else if (ts.isExportDeclaration(statement) && statement.exportClause && ts.isNamedExports(statement.exportClause)) {
      const handed = statement.exportClause.elements.find(({ name }) => name.text === inner)
      const from = statement.moduleSpecifier
      if (handed === undefined || from === undefined || !ts.isStringLiteral(from)) continue
      const next = from.text.startsWith('.') ? posix.join(posix.dirname(file), from.text) : null
      return declared({ inner: (handed.propertyName ?? handed.name).text, file: next })
    }
  }
  return null
}
