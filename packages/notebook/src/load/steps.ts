/**
 * The steps of a notebook: each statement of its body by itself, so that one that fails takes no other down. Works on JavaScript, line by line: what is put in
 * stands on lines of its own, and every other line keeps its columns.
 */
import { type Node, parse, type Program } from 'acorn'

/** A place in a text: lines from 1, columns from 0. */
export interface TextPlace {
  readonly line: number
  readonly column: number
}

/** What the body tells the runner of a step. */
export interface StepMark {
  /** in the file as written; lines and columns from 1 */
  readonly line: number
  readonly column: number
  /** last line */
  readonly endLine: number
  /** names of the body that the step sets */
  readonly gives: readonly string[]
  /** names that it reads */
  readonly uses: readonly string[]
}

export interface Stepped {
  readonly code: string
  /** numbers of the lines that were put in, of the new text, from 0 */
  readonly putIn: readonly number[]
  /** of the steps, in their order */
  readonly marks: readonly StepMark[]
}

/** what the body calls for each step; a second parameter of it */
const STEPS = '$loopwright'

/** acorn's nodes, as they are walked */
type Walked = Node & { readonly [key: string]: unknown }

/**
 * The module with each statement of the notebook's body as a step of its own.
 *
 * @param code     JavaScript module, one statement a line at most
 * @param written  where a place of `code` stands in the file as it was written
 * @returns        null where there is no body to be split: it is carried out as it is
 */
export function withSteps(code: string, written: (place: TextPlace) => TextPlace): Stepped | null {
  const body = bodyOf(program(code))
  const parameters = body === null ? null : secondParameter(code, body)
  if (body === null || parameters === null) return null
  const block = body.body as Walked
  const statements = (block.body as Walked[]).filter(({ type }) => !/^(Function|Class)Declaration$|^EmptyStatement$/.test(type))
  if (statements.length === 0 || !statements.every((each) => standsAlone(code, each))) return null
  const names = new Set(statements.flatMap(declared))
  const edits: Edit[] = [...(body.async === true ? [] : [{ at: body.start, over: 0, text: 'async ' }]), parameters]
  const marks: StepMark[] = []
  const [first] = statements
  if (names.size > 0) edits.push(line(lineStart(code, first!.start), `let ${[...names].join(', ')};`))
  for (const statement of statements) {
    const start = written(placeAt(code, statement.start))
    const end = written(placeAt(code, statement.end - 1))
    const mark: StepMark = {
      line: start.line,
      column: start.column + 1,
      endLine: Math.max(start.line, end.line),
      gives: [...new Set([...declared(statement), ...assigned(statement)])].filter((name) => names.has(name)),
      uses: [...new Set(read(statement))].filter((name) => names.has(name)),
    }
    marks.push(mark)
    edits.push(line(lineStart(code, statement.start), `if (await ${STEPS}(${JSON.stringify(mark)}, async () => {`))
    edits.push(...asAssignment(statement))
    edits.push(line(lineEnd(code, statement.end), `return ${STEPS}.next; })) return;`))
  }
  return { ...applied(code, edits), marks }
}

/** A text to be put in at a place, over `over` characters. */
interface Edit {
  readonly at: number
  readonly over: number
  readonly text: string
}

const line = (at: number, text: string): Edit => ({ at, over: 0, text: `${text}\n` })
const lineStart = (code: string, at: number): number => code.lastIndexOf('\n', at - 1) + 1
const lineEnd = (code: string, at: number): number => code.indexOf('\n', at) + 1

/** Nothing else stands on its first line before it, nor on its last one behind it. */
function standsAlone(code: string, { start, end }: Node): boolean {
  const next = code.indexOf('\n', end)
  return next >= 0 && code.slice(lineStart(code, start), start).trim() === '' && code.slice(end, next).trim() === ''
}

function applied(code: string, edits: readonly Edit[]): Omit<Stepped, 'marks'> {
  const ordered = edits.map((edit, index) => ({ edit, index })).sort((a, b) => a.edit.at - b.edit.at || a.index - b.index)
  const putIn: number[] = []
  let text = ''
  let lines = 0
  let done = 0
  const add = (part: string): void => {
    text += part
    lines += part.split('\n').length - 1
  }
  for (const { edit } of ordered) {
    add(code.slice(done, edit.at))
    if (edit.text.endsWith('\n')) putIn.push(lines)
    add(edit.text)
    done = edit.at + edit.over
  }
  add(code.slice(done))
  return { code: text, putIn }
}

/** The names are declared once for all steps, so that a declaration becomes an assignment, with its columns as they are. */
function asAssignment(statement: Walked): Edit[] {
  if (statement.type !== 'VariableDeclaration') return []
  const word = String(statement.kind)
  const last = (statement.declarations as Walked[]).at(-1)!
  return [
    { at: statement.start, over: word.length, text: '('.padStart(word.length) },
    { at: last.end, over: 0, text: ')' },
  ]
}

function program(code: string): Program | null {
  try {
    return parse(code, { ecmaVersion: 'latest', sourceType: 'module' })
  } catch {
    return null
  }
}

/** The function with the body: what the first call of `notebook` with two values is given second. */
function bodyOf(root: Program | null): Walked | null {
  for (const node of root === null ? [] : nodesOf(root as unknown as Walked)) {
    const [, body] = (node.type === 'CallExpression' ? node.arguments : []) as Walked[]
    const called = node.callee as Walked | undefined
    if (called?.type !== 'Identifier' || called.name !== 'notebook' || body === undefined) continue
    const isFunction = /^(Arrow)?FunctionExpression$/.test(body.type)
    return isFunction && (body.body as Walked).type === 'BlockStatement' && body.generator !== true ? body : null
  }
  return null
}

function secondParameter(code: string, { params, start, body }: Walked): Edit | null {
  const given = params as Walked[]
  if (given.length > 1 || given[0]?.type === 'RestElement') return null
  if (given.length === 1 && code.slice(start, given[0]!.start).includes('(')) return { at: given[0]!.end, over: 0, text: `, ${STEPS}` }
  const at = code.slice(start, (body as Walked).start).indexOf('()')
  return at < 0 ? null : { at: start + at + 1, over: 0, text: `_, ${STEPS}` }
}

/** Every node below, in no special order. */
function* nodesOf(node: Walked): Generator<Walked> {
  yield node
  for (const value of Object.values(node)) {
    for (const child of Array.isArray(value) ? value : [value])
      if (typeof child === 'object' && child !== null && typeof (child as Walked).type === 'string') yield* nodesOf(child as Walked)
  }
}

/** Names that a pattern binds or sets. */
function bound(pattern: Walked | null): string[] {
  if (pattern === null) return []
  switch (pattern.type) {
    case 'Identifier':
      return [String(pattern.name)]
    case 'ObjectPattern':
      return (pattern.properties as Walked[]).flatMap((each) => bound((each.value ?? each.argument) as Walked))
    case 'ArrayPattern':
      return (pattern.elements as (Walked | null)[]).flatMap(bound)
    case 'AssignmentPattern':
      return bound(pattern.left as Walked)
    case 'RestElement':
      return bound(pattern.argument as Walked)
    default:
      return []
  }
}

const declared = (statement: Walked): string[] =>
  statement.type === 'VariableDeclaration' ? (statement.declarations as Walked[]).flatMap(({ id }) => bound(id as Walked)) : []

/** Names that are set anywhere in it. */
const assigned = (statement: Walked): string[] =>
  [...nodesOf(statement)].flatMap((node) => {
    if (node.type === 'AssignmentExpression') return bound(node.left as Walked)
    return node.type === 'UpdateExpression' ? bound(node.argument as Walked) : []
  })

/** Names that stand in it, but for those of properties. More than it reads rather than fewer. */
function read(node: Walked): string[] {
  if (node.type === 'Identifier') return [String(node.name)]
  const skipped =
    node.type === 'MemberExpression' && node.computed !== true
      ? 'property'
      : node.type === 'Property' && node.computed !== true && node.shorthand !== true
        ? 'key'
        : node.type === 'VariableDeclarator' && (node.id as Walked).type === 'Identifier'
          ? 'id'
          : ''
  return Object.entries(node).flatMap(([key, value]) =>
    key === skipped
      ? []
      : (Array.isArray(value) ? value : [value]).flatMap((child) =>
          typeof child === 'object' && child !== null && typeof (child as Walked).type === 'string' ? read(child as Walked) : [],
        ),
  )
}

function placeAt(code: string, at: number): TextPlace {
  const before = code.slice(0, at)
  return { line: before.split('\n').length, column: at - (before.lastIndexOf('\n') + 1) }
}
