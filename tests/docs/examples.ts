import type { Source } from '../tidy/sources.ts'

/** An executed example of a docstring: `@example f(2) // => 4`. */
export interface Example {
  readonly file: string
  readonly line: number
  readonly expression: string
  readonly expected: string
}

/** Every example of a file; one that has no `// =>` is told with an empty expectation, and fails. */
export function examplesOf(source: Source): Example[] {
  return source.text.split('\n').flatMap((text, index) => {
    const found = /@example\s+(.*?)(?:\s*\*\/)?$/.exec(text)
    if (!found) return []
    const [expression = '', expected = ''] = found[1]!.split('// =>')
    return [{ file: source.file, line: index + 1, expression: expression.trim(), expected: expected.trim() }]
  })
}

const AsyncFunction = (async () => {}).constructor as new (...words: string[]) => (...values: unknown[]) => Promise<unknown>

/** What the example gives and what it should give, both computed with these names in scope; either may wait for something. */
export async function runExample(
  example: Example,
  scope: Readonly<Record<string, unknown>>,
): Promise<{ readonly is: unknown; readonly shouldBe: unknown }> {
  const names = Object.keys(scope).filter((name) => /^[A-Za-z_$][\w$]*$/.test(name) && name !== 'default')
  const run = (text: string) => new AsyncFunction(...names, `"use strict"; return (${text})`)(...names.map((name) => scope[name]))
  return { is: await run(example.expression), shouldBe: await run(example.expected) }
}

/** Names of the file that an example of something public needs, and that are not public themselves: nobody else can carry it out. */
export function hiddenNames(
  { expression }: Example,
  scope: Readonly<Record<string, unknown>>,
  own: Readonly<Record<string, unknown>>,
): string[] {
  const named = Object.keys(own).filter((name) => new RegExp(`\\b${name}\\b`).test(expression))
  return named.some((name) => name in scope) ? named.filter((name) => !(name in scope)) : []
}

/** Documents give the mathematical value; special functions come this near, relatively. */
const NEAR = 1e-13

/** Equal; numbers within NEAR, and a space is a space, however wide. */
export function agree(is: unknown, shouldBe: unknown): boolean {
  if (typeof is === 'number' && typeof shouldBe === 'number') {
    return Object.is(is, shouldBe) || Math.abs(is - shouldBe) <= NEAR * Math.max(Math.abs(is), Math.abs(shouldBe))
  }
  if (ArrayBuffer.isView(is) && Array.isArray(shouldBe)) return agree(Array.from(is as unknown as ArrayLike<unknown>), shouldBe)
  if (Array.isArray(is) && Array.isArray(shouldBe))
    return is.length === shouldBe.length && is.every((value, i) => agree(value, shouldBe[i]))
  if (is !== null && shouldBe !== null && typeof is === 'object' && typeof shouldBe === 'object') {
    const keys = Object.keys(is)
    return (
      keys.length === Object.keys(shouldBe).length &&
      keys.every((key) => key in shouldBe && agree((is as Record<string, unknown>)[key], (shouldBe as Record<string, unknown>)[key]))
    )
  }
  if (typeof is === 'string' && typeof shouldBe === 'string') return is.replaceAll(/\s/g, ' ') === shouldBe.replaceAll(/\s/g, ' ')
  return is === shouldBe
}

/**
 * What a `ts` block of a document says wrongly: every line `expression // => value` is held to its value, the other lines are run before it.
 *
 * @param load  gives the module behind a name
 */
export async function blockFaults(text: string, load: (name: string) => Promise<Record<string, unknown>>): Promise<string[]> {
  const scope: Record<string, unknown> = {}
  const faults: string[] = []
  const body: string[] = []
  for (const line of text.split('\n')) {
    const imported = /^import \{([^}]*)\} from '([^']+)'$/.exec(line)
    const [expression = '', expected] = line.split('// =>')
    if (imported) {
      const names = imported[1]!.split(',').map((name) => name.trim())
      const module = await load(imported[2]!)
      for (const name of names) scope[name] = module[name]
      faults.push(...names.filter((name) => module[name] === undefined).map((name) => `${imported[2]} has no ${name}`))
    } else body.push(expected === undefined ? line : `check(${JSON.stringify(line)}, (${expression}), (${expected}))`)
  }
  const check = (line: string, is: unknown, shouldBe: unknown): void => {
    if (!agree(is, shouldBe)) faults.push(`${line} gives ${JSON.stringify(is)}`)
  }
  if (faults.length === 0) new Function('check', ...Object.keys(scope), `"use strict";\n${body.join('\n')}`)(check, ...Object.values(scope))
  return faults
}
