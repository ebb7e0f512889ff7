import { type Difference, nearest, scenarioDifferences } from '@loopwright/scenario'
import { type CompareResult, compareLines } from '@loopwright/study/compare'
import { compareDocument } from '../documents/compareDocument.ts'
import { type Loaded, loadScenario, withChanges } from '../loadScenario.ts'
import type { SetChange } from '../options/setChange.ts'
import { Misuse, type Shell } from '../shell/shell.ts'
import { type StudyFlags, studyCommand } from '../studyCommand.ts'
import { storyOptions } from '../output/tell.ts'

export interface CompareFlags extends StudyFlags {
  /** true: all of the file; else names, separated by commas */
  readonly variations?: true | string
  /** lines made of the first file by changes */
  readonly set?: readonly SetChange[]
  /** name of the line that the others are set beside; default: the first */
  readonly base?: string
}

/** Several scenarios, or variations of one, in the same random worlds. */
export async function compare(shell: Shell, files: readonly string[], flags: CompareFlags, command: string): Promise<number> {
  const { replications, seed } = flags
  const { loaded, names } = baseFirst(await load(shell, files, flags), flags.base)
  const [first] = loaded
  const changed = loaded.map(({ scenario }): Difference[] => scenarioDifferences(first!.scenario, scenario))
  const lines = loaded.map(({ scenario }, index) => ({
    name: names[index]!,
    line: scenario.line,
    plan: scenario.plan?.unitsPerWindow ?? null,
  }))
  return await studyCommand<CompareResult>(shell, flags, {
    what: `which of ${lines.length} lines makes more, ${replications} replications each, seed ${seed}`,
    total: lines.length * replications,
    source: first!,
    command,
    study: (options) => compareLines(lines, { replications }, options),
    document: (result) =>
      compareDocument(
        result,
        loaded.map(({ file, variation }, index) => ({ file, variation, changed: changed[index]! })),
      ),
    tale: (result, { compareStory }) =>
      compareStory(
        loaded.map(({ scenario }) => scenario),
        result,
        storyOptions(first!, result),
      ),
    simulated: (result) => result,
  })
}

/** The line that the others are set beside, then the others in their order. */
function baseFirst(loaded: readonly Loaded[], base: string | undefined): { readonly loaded: Loaded[]; readonly names: string[] } {
  const names = namesOf(loaded)
  const at =
    base === undefined
      ? 0
      : Math.max(
          names.indexOf(base),
          loaded.findIndex(({ file, variation }) => variation === null && file === base),
        )
  if (at < 0) {
    const near = nearest(base!, names)
    throw new Misuse(
      `--base "${base}": there is no line of that name; ${near === null ? `there are ${names.map((name) => `"${name}"`).join(', ')}` : `did you mean "${near}"?`}`,
    )
  }
  const order = [at, ...[...names.keys()].filter((index) => index !== at)]
  return { loaded: order.map((index) => loaded[index]!), names: order.map((index) => names[index]!) }
}

async function load(shell: Shell, files: readonly string[], { variations, set = [] }: CompareFlags): Promise<Loaded[]> {
  const loaded = await written(shell, files, variations, set.length > 0)
  const twice = set.find(({ name }, index) => set.findIndex((each) => each.name === name) !== index)
  if (twice !== undefined) throw new Misuse(`two lines are called "${twice.name}"; give each --set its own name, as in "name: path=value"`)
  for (const { name, changes } of set) loaded.push(await withChanges(shell, loaded[0]!, name, changes))
  return loaded
}

/** The lines that stand in files. */
async function written(shell: Shell, files: readonly string[], variations: CompareFlags['variations'], more: boolean): Promise<Loaded[]> {
  if (variations === undefined) {
    if (files.length < 2 && !more) throw new Misuse('compare takes two or more scenario files, or one file with --variations or --set')
    const loaded: Loaded[] = []
    for (const file of files) loaded.push(await loadScenario(shell, file))
    return loaded
  }
  const [file] = files
  if (files.length !== 1) throw new Misuse('--variations compares the variations of one file with what it says itself; give one file')
  const base = await loadScenario(shell, file!)
  const known = base.notes.variations
  const names = variations === true ? known : known.includes(variations) ? [variations] : variations.split(',').map((name) => name.trim())
  if (names.length === 0)
    throw new Misuse(`"${file}" has no variations: write them under "variations:", each with a name and its changed values`)
  const loaded = [base]
  for (const name of names) loaded.push(await loadScenario(shell, file!, name))
  return loaded
}

/** By variation, else by the scenario's name; by file where names repeat. */
function namesOf(loaded: readonly Loaded[]): string[] {
  const names = loaded.map(({ variation, scenario }) => variation ?? scenario.name)
  const unique = new Set(names).size === names.length
  if (unique) return names
  const files = loaded.map(({ file, variation }) => variation ?? file)
  return new Set(files).size === files.length ? files : files.map((file, index) => `${file} (${index + 1})`)
}
