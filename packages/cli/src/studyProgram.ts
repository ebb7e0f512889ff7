/** The commands that decide something: names, options, examples. */
import type { Command } from 'commander'
import { type ProgramContext, simulating, telling, threaded } from './actions.ts'
import { carrierCounts, fileName, levelPercent, nameList, percent, positiveNumber, wholeNumber } from './options/arguments.ts'
import { dataOptions } from './options/tableOptions.ts'
import { moreLevels } from './options/levels.ts'
import {
  addOptions,
  COMMAND_GROUPS,
  lineOptions,
  machineOptions,
  option,
  outputOptions,
  plainOption,
  sampleOptions,
  seedOption,
} from './options/options.ts'
import { moreChanges } from './options/setChange.ts'

/** a study runs at least so many lines */
const LINES_MIN = 2

/** Adds the commands, in the order in which people ask. */
export function addDecisions(root: Command, context: ProgramContext): void {
  root.commandsGroup(COMMAND_GROUPS.decide)
  addCarrierCounts(root, context)
  addComparisons(root, context)
  addCauses(root, context)
  addBalance(root, context)
}

/** How many carriers. */
function addCarrierCounts(root: Command, context: ProgramContext): void {
  const { shell, command } = context
  addOptions(root.command('carriers <file>'), {
    line: lineOptions(),
    question: [
      option('--within <percent>', 'how far below the best output is near enough', percent, 1),
      option('--level <percent>', 'confidence of the answer', levelPercent, 95),
      option('--carriers <counts>', 'where to begin, such as 5..18 (default: around the lower knee of the law)', carrierCounts),
    ],
    sample: [
      option('--at-most <count>', 'windows to simulate of one number of carriers, at most (default: 1000)', wholeNumber),
      seedOption(),
    ],
    output: [plainOption(), ...outputOptions()],
    machine: machineOptions(),
  })
    .description('how many carriers the loop needs, with as many runs as the answer takes')
    .action(
      async (file: string, { atMost, ...flags }) =>
        await threaded(context, flags, Number.POSITIVE_INFINITY, async (all) =>
          (await import('./commands/carriers.ts')).carriers(shell, file, { ...all, replications: atMost }, command),
        ),
    )

  addOptions(root.command('forecast <file>'), {
    line: [
      ...lineOptions(),
      option('--data <folder>', 'tables that times, stops and shares come from: their doubt is simulated too', fileName),
      ...dataOptions(),
    ],
    question: [
      option(
        '--shifts-per-week <count>',
        'shifts whose output makes a week (default: those of a day, on five days; none without a calendar)',
        wholeNumber,
      ),
    ],
    sample: [
      ...sampleOptions(200),
      option('--draws <count>', 'with --data: lines as others might have measured them (default: 100)', wholeNumber),
    ],
    output: [plainOption(), ...outputOptions()],
    machine: machineOptions(),
  })
    .description('say what may be promised per shift and per week, and the overtime that the plan takes')
    .action(simulating(context, async () => (await import('./commands/forecast.ts')).forecast))

  addOptions(root.command('sweep <file>'), {
    line: lineOptions(),
    question: [
      option('--carriers <counts>', 'which to try, such as 5..18 or 5,8,12 (default: around the lower knee of the law)', carrierCounts),
    ],
    sample: sampleOptions(100),
    output: [plainOption(), ...outputOptions()],
    machine: machineOptions(),
  })
    .description('try numbers of carriers, each on the same simulated shifts: the curve, with as many runs as you say')
    .action(
      async (file: string, flags) =>
        await threaded(context, flags, flags.replications * (flags.carriers?.length ?? 1), async (all) =>
          (await import('./commands/sweep.ts')).sweep(shell, file, all, command),
        ),
    )
}

/** Which of several. */
function addComparisons(root: Command, context: ProgramContext): void {
  const { shell, command } = context
  addOptions(root.command('compare <files...>'), {
    question: [
      option('--variations [names]', 'the variations of one file, beside the file itself: all, or those named'),
      option('--set <changes>', 'one more line: the first file with changes, "name: path=value; path=value"; may be repeated', moreChanges),
      option('--base <name>', 'which line the others are set beside, by its name (default: the first)'),
    ],
    sample: sampleOptions(30),
    output: outputOptions(),
    machine: machineOptions(),
  })
    .description('compare scenarios, or variations of one file, on the same simulated shifts')
    .action(simulating(context, async () => (await import('./commands/compare.ts')).compare, LINES_MIN))

  addOptions(root.command('grid <file>'), {
    line: lineOptions(),
    question: [
      option('--carriers <counts>', 'numbers of carriers, such as 6..12 or 6,8,12', carrierCounts),
      option(
        '--set <levels>',
        'levels of a value by its path, such as "drive.speed=10,12,15 m/min"; "|" parts levels that hold commas; may be repeated',
        moreLevels,
      ),
    ],
    sample: sampleOptions(30),
    output: outputOptions(),
    machine: machineOptions(),
  })
    .description('try every setting of several values: a table of outputs, what each value does, and whether they depend on each other')
    .action(simulating(context, async () => (await import('./commands/grid.ts')).grid, LINES_MIN))

  addOptions(root.command('order <file>'), {
    line: lineOptions(),
    question: [
      option('--move <stations>', 'which may move (default: all that work, but for load and unload)', nameList),
      option('--stay <stations>', 'which stay where they are', nameList),
      option('--before <rules>', 'what comes before what in the flow, such as "S3<S4,S4<S6"', nameList),
      option('--zones <zones>', 'where they may stand, such as Z13..Z16 (default: every zone that is free)', nameList),
      option('--try <places>', 'an order to try as it is, such as "S5@Z14"'),
      option('--least-gain <units>', 'smallest gain worth caring about (default: 0.5 % of today’s output)', positiveNumber),
    ],
    sample: [option('--check-replications <count>', 'fresh windows for the chosen order against today’s', wholeNumber, 60), seedOption()],
    output: outputOptions(),
    machine: machineOptions(),
  })
    .description('choose an order and places of stations')
    .action(
      async (file: string, { checkReplications, leastGain, ...flags }) =>
        await threaded(context, flags, LINES_MIN * checkReplications, async (all) =>
          (await import('./commands/order.ts')).order(
            shell,
            file,
            { ...all, replications: checkReplications, ...(leastGain === undefined ? {} : { delta: leastGain }) },
            command,
          ),
        ),
    )
}

/** Why no more. */
function addCauses(root: Command, context: ProgramContext): void {
  addOptions(root.command('drivers <file>'), {
    line: lineOptions(),
    sample: sampleOptions(30),
    output: outputOptions(),
    machine: machineOptions(),
  })
    .description('say what limits the line: how much 5 % of each time, stop and share moves the output')
    .action(simulating(context, async () => (await import('./commands/drivers.ts')).drivers, LINES_MIN))

  addOptions(root.command('losses <file>'), {
    line: lineOptions(),
    sample: sampleOptions(60),
    output: outputOptions(),
    machine: machineOptions(),
  })
    .description('say what is lost by what cause: the same shifts again, with one cause after another taken out')
    .action(simulating(context, async () => (await import('./commands/losses.ts')).losses, LINES_MIN))
}

function addBalance(root: Command, context: ProgramContext): void {
  addOptions(root.command('balance <file>'), {
    question: [
      option('--cycle <seconds>', 'find the fewest stations for this cycle', positiveNumber),
      option('--stations <count>', 'find the shortest cycle for so many stations', wholeNumber),
      option('--before <rules>', 'of a scenario: what comes before what, such as "wire<test" (default: today’s order)', nameList),
    ],
    output: outputOptions(),
  })
    .description('share tasks among stations, of a table (.csv: task, seconds, after) or of a scenario; runs nothing')
    .action(telling(context, async () => (await import('./commands/balance.ts')).balance))
}
