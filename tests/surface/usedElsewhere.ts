import { filesUnder, type Source } from '../tidy/sources.ts'

interface Words {
  readonly file: string
  readonly words: ReadonlySet<string>
}

const wordsOf = ({ file, text }: Source): Words => ({ file, words: new Set(text.match(/[A-Za-z_$][\w$]*/g)) })

let known: readonly Words[] | null = null

/** Code of packages, tests and notebooks, and documents of packages but for what has changed. */
const everything = (): readonly Words[] =>
  (known ??= [
    ...['packages', 'tests', 'notebooks'].flatMap((folder) => filesUnder(folder, /\.ts$/)),
    ...filesUnder('packages', /(?<!CHANGELOG)\.md$/),
  ].map(wordsOf))

/** Whether a name stands in code outside the package, or in a document of it. */
export function usedElsewhere(of: string, name: string): boolean {
  const own = `packages/${of}/`
  return everything().some(({ file, words }) => words.has(name) && (!file.startsWith(own) || file.endsWith('.md')))
}
