import { expect, test } from 'vitest'
import { withSteps, type StepMark } from './steps.ts'

const CODE = `import { notebook } from "@loopwright/notebook";
export default notebook({ title: "A", scenario: "a.yaml" }, async ({ sweep, show }) => {
  const { low, rows: [first, ...rest] } = await sweep({ low: 1 });
  let total = 0;
  for (const row of rest) {
    total += helper(row.first);
  }
  if (total > 3) return;
  show(total);
  function helper(value) {
    return value;
  }
});
`
const same = ({ line, column }: { line: number; column: number }) => ({ line, column })

/** What the steps say of themselves. */
const marks = (code: string): StepMark[] =>
  [...code.matchAll(/\$loopwright\((\{.*\}), async/g)].map(([, mark]) => JSON.parse(mark!) as StepMark)

test('each statement is a step; its names are known to the others', () => {
  const { code } = withSteps(CODE, same)!
  expect(marks(code)).toEqual([
    { line: 3, column: 3, endLine: 3, gives: ['low', 'first', 'rest'], uses: ['low', 'first', 'rest'] },
    { line: 4, column: 3, endLine: 4, gives: ['total'], uses: [] },
    { line: 5, column: 3, endLine: 7, gives: ['total'], uses: ['rest', 'total'] },
    { line: 8, column: 3, endLine: 8, gives: [], uses: ['total'] },
    { line: 9, column: 3, endLine: 9, gives: [], uses: ['total'] },
  ])
})

test('lines that were there keep their columns, and those put in are told', () => {
  const { code, putIn } = withSteps(CODE, same)!
  const kept = code.split('\n').filter((_, line) => !putIn.includes(line))
  const before = CODE.split('\n')
  expect(kept[2]).toBe('      ( { low, rows: [first, ...rest] } = await sweep({ low: 1 }));')
  expect(kept[3]).toBe('    ( total = 0);')
  expect(kept.toSpliced(1, 3)).toEqual(before.toSpliced(1, 3))
  for (const word of ['{ low', 'await sweep', 'low: 1']) expect(kept[2]!.indexOf(word)).toBe(before[2]!.indexOf(word))
})

test('the new text does what the old one did', async () => {
  const run = async (text: string, steps: unknown): Promise<unknown[]> => {
    const shown: unknown[] = []
    const body = new Function('notebook', `return ${text.split('\n').slice(1).join('\n').replace('export default ', '')}`)
    const given = body((_: unknown, made: unknown) => made) as (context: object, steps: unknown) => Promise<void>
    await given(
      { sweep: async () => ({ low: 1, rows: [{}, { first: 1 }, { first: 1 }] }), show: (value: unknown) => shown.push(value) },
      steps,
    )
    return shown
  }
  const next = Symbol('next')
  const steps = Object.assign(async (_: unknown, part: () => Promise<unknown>) => (await part()) !== next, { next })
  expect(await run(withSteps(CODE, same)!.code, steps)).toEqual(await run(CODE, undefined))
  expect(await run(withSteps(CODE.replace('total > 3', 'total > 1'), same)!.code, steps)).toEqual([])
})

test.each([
  ['a body that is no function of its own', 'export default notebook({}, body);\n'],
  ['an expression', 'export default notebook({}, async ({ show }) => show());\n'],
  ['no notebook', 'export const a = 1;\n'],
  ['no program', 'export default notebook({}, async ({ show }) => {\n'],
  ['no statement', 'export default notebook({}, async ({ show }) => {\n});\n'],
  ['several statements on a line', 'export default notebook({}, async ({ show }) => {\n  show(); show();\n});\n'],
])('%s stays as it is', (_, code) => expect(withSteps(code, same)).toBeNull())

test('a body without parameters, and one that waits for nothing', () => {
  expect(withSteps('export default notebook({}, () => {\n  a();\n});\n', same)!.code).toContain('async (_, $loopwright) => {')
  expect(withSteps('export default notebook({}, async function() {\n  a();\n});\n', same)!.code).toContain(
    'async function(_, $loopwright) {',
  )
})
