/** The commands of the studies: names, options, examples. */
import { type Command, Option } from 'commander'
import { positiveNumber, seedText, wholeNumber } from './arguments.ts'
import { nameList } from './orderRules.ts'
import type { Shell } from './shell.ts'
import type { ThreadFlags } from './threads.ts'

const SEED = '1'
/** a study runs at least so many lines */
const LINES_MIN = 2
const VARIATION = ['--variation <name>', 'with a named set of changed values from the file'] as const

export interface ProgramContext {
  readonly shell: Shell
  /** as it was typed */
  readonly command: string
  readonly onCode: (code: number) => void
}

/** Adds the commands of the studies. */
export function addStudies(root: Command, { shell, command, onCode }: ProgramContext): void {
  studyOptions(root.command('compare <files...>'), 30)
    .description('compare scenarios, or variations of one file, in the same random worlds')
    .option('--variations [names]', 'the variations of one file, beside the file itself: all, or those named')
    .addHelpText(
      'after',
      examples('compare today.yaml proposal.yaml', 'compare line.yaml --variations', 'compare line.yaml --variations "train,slow"'),
    )
    .action(async (files: string[], flags) =>
      onCode(
        await threaded(flags, LINES_MIN * flags.replications, async (all) =>
          (await import('./commands/compare.ts')).compare(shell, files, all, command),
        ),
      ),
    )

  studyOptions(root.command('drivers <file>'), 30)
    .description('say what limits the line: how much 5 % of each time, stop and share moves the output')
    .option(...VARIATION)
    .addHelpText('after', examples('drivers line.yaml', 'drivers line.yaml --replications 60 --out out/drivers.html'))
    .action(async (file: string, flags) =>
      onCode(
        await threaded(flags, LINES_MIN * flags.replications, async (all) =>
          (await import('./commands/drivers.ts')).drivers(shell, file, all, command),
        ),
      ),
    )

  studyOptions(root.command('losses <file>'), 60)
    .description('say what is lost by what cause: the same shifts again, with one cause after another taken out')
    .option(...VARIATION)
    .addHelpText('after', examples('losses line.yaml', 'losses line.yaml --variation train'))
    .action(async (file: string, flags) =>
      onCode(
        await threaded(flags, LINES_MIN * flags.replications, async (all) =>
          (await import('./commands/losses.ts')).losses(shell, file, all, command),
        ),
      ),
    )

  studyOptions(root.command('order <file>'), 60, 'fresh random worlds for the chosen order against today’s')
    .description('choose an order and places of stations')
    .option('--move <stations>', 'which may move (default: all that work, but for load and unload)', nameList)
    .option('--keep <stations>', 'which stay where they are', nameList)
    .option('--before <rules>', 'what comes before what, such as "S3<S4,S4<S6"', nameList)
    .option('--zones <zones>', 'where they may stand, such as Z13..Z16 (default: every zone that is free)', nameList)
    .option('--mine <places>', 'an order to try as it is, such as "S5@Z14"')
    .option('--delta <units>', 'smallest difference worth caring about (default: 0.5 % of today’s output)', positiveNumber)
    .option(...VARIATION)
    .addHelpText(
      'after',
      examples('order line.yaml --move S4,S5,S6 --zones Z13..Z18 --before "S4<S6"', 'order line.yaml --move S5 --mine "S5@Z14"'),
    )
    .action(async (file: string, flags) =>
      onCode(
        await threaded(flags, LINES_MIN * flags.replications, async (all) =>
          (await import('./commands/order.ts')).order(shell, file, all, command),
        ),
      ),
    )

  tracedOptions(root.command('steady <file>'), 10, 'long runs')
    .description('say how long the start of a run shows, what the line makes from then on, and what run length would do')
    .option(...VARIATION)
    .addHelpText('after', examples('steady line.yaml'))
    .action(async (file: string, flags) => onCode(await (await import('./commands/steady.ts')).steady(shell, file, flags, command)))

  root
    .command('balance <file>')
    .description('share tasks among stations, of a table (.csv: task, seconds, after) or of a scenario; runs nothing')
    .option('--cycle <seconds>', 'find the fewest stations for this cycle', positiveNumber)
    .option('--stations <count>', 'find the shortest cycle for so many stations', wholeNumber)
    .option('--before <rules>', 'of a scenario: what comes before what, such as "wire<test" (default: today’s order)', nameList)
    .option('--json', 'print one JSON document')
    .option('--out <file>', 'write the page, one HTML file')
    .addHelpText('after', examples('balance tasks.csv --cycle 60', 'balance line.yaml --stations 5'))
    .action(async (file: string, flags) => onCode(await (await import('./commands/balance.ts')).balance(shell, file, flags, command)))
}

function studyOptions(command: Command, replications: number, what = 'random worlds to run'): Command {
  return tracedOptions(command, replications, what).addOption(engineOption())
}

/** Both engines give the same, to the last bit: for who wants to see it, or to time them. */
export function engineOption(): Option {
  return new Option(
    '--engine <engine>',
    'run everything again by one engine (default: the recursion where it holds); changes no result',
  ).choices(['events', 'recursion'])
}

/** Of studies that need the events of their runs, which only one engine has. */
function tracedOptions(command: Command, replications: number, what: string): Command {
  return command
    .option('--replications <count>', what, wholeNumber, replications)
    .option('--seed <text>', 'names the random worlds', seedText, SEED)
    .option('--workers <count>', 'threads; changes no result (default: one per core)', wholeNumber)
    .option('--json', 'print one JSON document, in full precision')
    .option('--out <file>', 'write the page, one HTML file')
    .option('--store <folder>', 'where finished replications are kept (default: .loopwright)')
    .option('--fresh', 'run everything again, keep nothing')
}

const examples = (...lines: readonly string[]): string => `\nExamples:\n${lines.map((line) => `  loopwright ${line}`).join('\n')}`

/** With threads started before anything else is loaded, where there will be enough runs. */
export async function threaded<F extends ThreadFlags>(flags: F, runs: number, run: (flags: F) => Promise<number>): Promise<number> {
  return await (await import('./threads.ts')).withThreads(flags, runs, run)
}
