import { type Difference, scenarioDifferences } from '@loopwright/scenario'
import { type CompareResult, compareLines } from '@loopwright/study'
import { compareDocument } from '../documents/compareDocument.ts'
import { type Loaded, loadScenario } from '../loadScenario.ts'
import { Misuse, type Shell } from '../shell.ts'
import { type StudyFlags, studyCommand } from '../studyCommand.ts'
import { compareSentences, compareSure, compareTable, compareWarnings, differenceLine } from '../words/compareWords.ts'
import { lengthWarning, startSentence } from '../words/startWords.ts'

export interface CompareFlags extends StudyFlags {
  /** true: all of the file; else names, separated by commas */
  readonly variations?: true | string
}

/** Several scenarios, or variations of one, in the same random worlds. */
export async function compare(shell: Shell, files: readonly string[], flags: CompareFlags, command: string): Promise<number> {
  const { replications, seed } = flags
  const loaded = await load(shell, files, flags.variations)
  const names = namesOf(loaded)
  const [first] = loaded
  const changed = loaded.map(({ scenario }): Difference[] => scenarioDifferences(first!.scenario, scenario))
  const per = first!.scenario.calendar?.shifts === 1 ? 'shift' : 'window'
  const lines = loaded.map(({ scenario }, index) => ({
    name: names[index]!,
    line: scenario.line,
    plan: scenario.plan?.unitsPerWindow ?? null,
  }))
  const cells = import('../studyCells.ts')
  return await studyCommand<CompareResult>(shell, flags, {
    what: `which of ${lines.length} lines makes more, ${replications} replications each, seed ${seed}`,
    total: lines.length * replications,
    source: first!,
    command,
    question: 'Which line makes more, and is the difference real?',
    study: (runner) => compareLines(lines, { seed, replications }, runner),
    partial: (result) => result.partial,
    document: (result) =>
      compareDocument(
        result,
        loaded.map(({ file, variation }, index) => ({ file, variation, changed: changed[index]! })),
      ),
    shown: async (result) => {
      const { listing, studyShown, tableCell } = await cells
      const lists = loaded.slice(1).map((_, index) => {
        const lines = changed[index + 1]!.map(differenceLine)
        return listing(
          `changed-${index + 1}`,
          lines.length === 0
            ? `${names[index + 1]} has the same inputs as ${names[0]}.`
            : `Changed inputs, ${names[0]} → ${names[index + 1]}:`,
          lines,
        )
      })
      return studyShown(
        {
          sentences: compareSentences(result, per),
          sure: [...compareSure(result), startSentence(first!.scenario)],
          parts: [tableCell('lines', compareTable(result, per)), ...lists],
          warnings: [...compareWarnings(result), ...[lengthWarning(first!.scenario)].filter((text) => text !== null)],
        },
        {
          source: first!,
          sentence: `${lines.length} lines simulated in the same worlds, ${result.lines[0]!.units.length} replications each, seed ${seed}.`,
          seed,
          replications,
          partial: result.partial,
        },
      )
    },
  })
}

async function load(shell: Shell, files: readonly string[], variations: CompareFlags['variations']): Promise<Loaded[]> {
  if (variations === undefined) {
    if (files.length < 2) throw new Misuse('compare takes two or more scenario files, or one file with --variations')
    const loaded: Loaded[] = []
    for (const file of files) loaded.push(await loadScenario(shell, file))
    return loaded
  }
  const [file] = files
  if (files.length !== 1) throw new Misuse('--variations compares the variations of one file with what it says itself; give one file')
  const base = await loadScenario(shell, file!)
  const known = base.notes.variations
  const names = variations === true ? known : variations.split(',').map((name) => name.trim())
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
