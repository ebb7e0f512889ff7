import type { Finding } from './finding.ts'
import { isTest, type Source } from './sources.ts'

/** What only tests use and yet stands in the packages, each with its reason. A folder ends in `/`. */
const FOR_TESTS: Readonly<Record<string, string>> = {
  'packages/charts/src/examples/': 'examples are for people to look at: tests draw them',
  'packages/decide/src/screening/screening.ts': 'NOTHING_GIVEN: the examples of its functions begin with it',
  'packages/line/src/quick/quick.ts': 'runQuick: quick instants alone, as tests compare them with plain ones',
}
const isForTests = (file: string): boolean =>
  Object.keys(FOR_TESTS).some((key) => (key.endsWith('/') ? file.startsWith(key) : file === key))

/** Exported functions, constants and classes: name, and where each stands. */
const EXPORTED = /^export (?:async )?(?:function\*?|const|class) ([A-Za-z_$][\w$]*)/gm

interface Words {
  readonly source: Source
  /** how often each word stands in the code; comments left out */
  readonly words: ReadonlyMap<string, number>
}

function wordsOf(source: Source): Words {
  const words = new Map<string, number>()
  const text = source.text.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '')
  for (const [word] of text.matchAll(/[A-Za-z_$][\w$]*/g)) words.set(word, (words.get(word) ?? 0) + 1)
  return { source, words }
}

/**
 * Values that are exported for nobody, and code that only tests call. What a door gives to others, `tests/surface.test.ts` judges.
 *
 * @param code       sources of the packages
 * @param others     tests, notebooks, and programs that start the command
 * @param documents  what is told of there is for people who write code
 */
export function idleExportFindings(code: readonly Source[], others: readonly Source[], documents: readonly Source[]): Finding[] {
  const all = [...code, ...others].map(wordsOf)
  const isDoor = ({ source }: Words): boolean => source.file.endsWith('/index.ts')
  const holders = new Map<string, Words[]>()
  for (const one of all) {
    for (const word of one.words.keys()) {
      const known = holders.get(word)
      if (known === undefined) holders.set(word, [one])
      else known.push(one)
    }
  }
  const told = documents.map(({ text }) => text).join('\n')
  const own = new Set(code)
  return all
    .filter((one) => own.has(one.source) && !isTest(one.source.file) && !isDoor(one))
    .flatMap(({ source, words }) =>
      [...source.text.matchAll(EXPORTED)].flatMap(({ 1: name, index }) => {
        const elsewhere = (holders.get(name!) ?? []).filter((one) => one.source !== source)
        const line = source.text.slice(0, index).split('\n').length
        if (elsewhere.length === 0) return [{ file: source.file, line, message: `nobody takes ${name}: do not export it` }]
        const idle =
          !isForTests(source.file) &&
          words.get(name!) === 1 &&
          elsewhere.every((one) => isTest(one.source.file)) &&
          !new RegExp(`\\b${name}\\b`).test(told)
        return idle ? [{ file: source.file, line, message: `only tests use ${name}: remove it, or move it to them` }] : []
      }),
    )
}
