/** Options that several commands share: one name, one meaning, one place in the help. */
import { type Command, InvalidArgumentError, Option } from 'commander'
import { fileName, pageFile, seedText, shareOf, wholeNumber } from './arguments.ts'
import { examplesOf } from './examples.ts'

/** In this order under each command. */
const GROUPS = {
  line: 'The line:',
  question: 'The question:',
  sample: 'The sample:',
  output: 'The output:',
  machine: 'The machine:',
} as const

export type OptionGroup = keyof typeof GROUPS

/** The commands by the question that they answer, in the order of the help. */
export const COMMAND_GROUPS = {
  measure: 'Bring measured data:',
  understand: 'Understand a line:',
  simulate: 'Simulate it:',
  decide: 'Decide:',
  sign: 'Sign:',
  keep: 'Keep:',
  machines: 'Many machines:',
  program: 'Write a study as a program:',
} as const

/** Names the random worlds where nothing else is said. */
const SEED = '1'

/** Adds options, whatever the order in which they are given, by groups: the line, the question, the sample, the output, the machine; and the examples of the help. */
export function addOptions(command: Command, groups: Partial<Readonly<Record<OptionGroup, readonly Option[]>>>): Command {
  for (const name of Object.keys(GROUPS) as OptionGroup[])
    for (const option of groups[name] ?? []) command.addOption(option.helpGroup(GROUPS[name]))
  return command.helpOption('-h, --help', 'show this').addHelpText('after', examplesOf(wordsOf(command)))
}

/** What is typed for it behind the program's name, such as `store info`. */
function wordsOf(command: Command): string {
  const { parent } = command
  return parent === null || parent.parent === null ? command.name() : `${wordsOf(parent)} ${command.name()}`
}

/** An option whose text is read by `parse`. */
export function option<T>(flags: string, says: string, parse?: (text: string) => T, otherwise?: T): Option {
  const made = new Option(flags, says)
  if (parse !== undefined) made.argParser(parse)
  return otherwise === undefined ? made : made.default(otherwise)
}

/** Changed values of the scenario. */
export const lineOptions = (): Option[] => [option('--variation <name>', 'with a named set of changed values from the file')]

/** @param replications  default */
export const sampleOptions = (replications: number): Option[] => [
  option('--replications <count>', 'windows to simulate of each line or number of carriers', wholeNumber, replications),
  seedOption(),
]

export const seedOption = (): Option => option('--seed <text>', 'any text; the same seed simulates the same shifts again', seedText, SEED)

const jsonOption = (): Option => option('--json', 'print one JSON document, in full precision')

export const csvOptions = (): Option[] => [
  option('--csv <folder>', 'write tables as CSV files', fileName),
  option('--csv-style <style>', 'how the files are written: as 1,0.5 or as 1;0,5').choices(['comma', 'semicolon']).default('comma'),
]

export const pageOptions = (): Option[] => [
  option('--out <file>', 'write the page, one HTML file', pageFile),
  option('--open', 'open the page in the browser when it is written'),
]

/** Of commands that tell means of windows. */
export const plainOption = (): Option =>
  option('--plain', 'tell the mean of the windows simulated with their luck, which is else taken out where that helps')

/** What is handed out beside the page. */
export const handoutOptions = (): Option[] => [
  option('--svg <folder>', 'write each figure as SVG', fileName),
  option('--png <folder>', 'write each figure as PNG', fileName),
  option('--pdf <file>', 'write the page as PDF, printed by a Chromium of this machine', fileName),
  option('--pptx <file>', 'write four slides: answer, curve, losses, assumptions', fileName),
]

/** All ways to tell a study. */
export const outputOptions = (): Option[] => [jsonOption(), ...csvOptions(), ...pageOptions(), ...handoutOptions()]

export const workersOption = (): Option => option('--workers <count>', 'threads; changes no result (default: one per core)', wholeNumber)

/** Of commands whose runs are counted before they are begun. */
export const yesOption = (): Option => option('--yes', 'go on, also where it will take more than an hour of a core')

/** Both engines give the same, to the last bit: for who wants to see it, or to time them. */
const engineOption = (): Option =>
  option('--engine <engine>', 'run everything again by one engine (default: the recursion where it holds); changes no result').choices([
    'events',
    'recursion',
  ])

export const storeOption = (): Option => option('--store <folder>', 'where finished replications are kept (default: .loopwright)')

export const keptOptions = (): Option[] => [storeOption(), option('--fresh', 'run everything again, keep nothing')]

/** Of commands whose runs several machines may share. */
export const sharedOptions = (): Option[] => [
  option('--part <share>', 'run only a share of the study, such as 3/8, and keep it in the store', shareOf),
  option('--queue <address>', 'let the workers of a queue run it, such as redis://plant-server'),
]

/** Of a command that has nothing to share: it says so at once. */
export const unsharedOptions = (): Option[] =>
  ['--part <share>', '--queue <address>'].map((flags) =>
    option(flags, ONE_RUN, () => {
      throw new InvalidArgumentError(ONE_RUN)
    }).hideHelp(),
  )

const ONE_RUN = 'One run is told, and there is nothing to share: leave it out.'

/** Of commands whose runs either engine can do, on any machine. */
export const machineOptions = (): Option[] => [workersOption(), engineOption(), yesOption(), ...sharedOptions(), ...keptOptions()]
