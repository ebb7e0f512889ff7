/** The commands that bring measured data: names, options, examples. */
import type { Command } from 'commander'
import { type ProgramContext, simulating, telling } from './actions.ts'
import { fileName, percent, positiveNumber, wholeNumber } from './options/arguments.ts'
import {
  addOptions,
  COMMAND_GROUPS,
  lineOptions,
  machineOptions,
  option,
  outputOptions,
  sampleOptions,
  seedOption,
} from './options/options.ts'
import { dataOptions, sharePercent, shortestTimes, tableOptions, writeOption } from './options/tableOptions.ts'

/** Adds the commands, in the order in which data are met. */
export function addMeasuring(root: Command, context: ProgramContext): void {
  root.commandsGroup(COMMAND_GROUPS.measure)
  addTimes(root, context)
  addStoplog(root, context)
  addMix(root, context)
  addAssemble(root, context)
}

function addTimes(root: Command, context: ProgramContext): void {
  addOptions(root.command('times <files...>'), {
    line: tableOptions('time=Seconds, task=Step, variant=Model'),
    question: [
      option('--task <name>', 'the task, where the table names none'),
      option('--rating <percent>', 'pace of whoever was timed, where the table has no ratings', sharePercent(40, 200)),
      option('--allowance <percent>', 'added to the times; then say where breaks are counted', sharePercent(0, 60)),
      option('--allowance-of <what>', 'what the allowance is a share of (default: work)').choices(['work', 'shift']),
      option('--breaks <where>', 'breaks are in the calendar of the scenario, or in the allowance').choices(['calendar', 'allowance']),
      option('--shortest <times>', 'the shortest time that a task can take, such as "wire=30, seal=12"', shortestTimes),
      option('--keep-values', 'simulate the measured values, not a curve'),
      option('--within <percent>', 'how well the means shall be known', percent, 5),
    ],
    sample: [seedOption()],
    output: [writeOption('write the tasks for a scenario, with where they come from'), ...outputOptions()],
  })
    .description('judge measured times (.csv, .xlsx): how long, how surely, what looks odd, what curve; runs nothing')
    .action(telling(context, async () => (await import('./commands/data/times.ts')).times))
}

function addStoplog(root: Command, context: ProgramContext): void {
  addOptions(root.command('stoplog <files...>'), {
    line: tableOptions('start=Down, end=Up, place=Machine'),
    question: [
      option('--from <day>', 'the log begins here, such as "2026-11-02 06:00" (default: its first start)'),
      option('--to <day>', 'and ends here (default: its last instant)'),
      option('--hours <hours>', 'when the line works, such as "Mon-Fri 06:00-14:20" (default: always)'),
      option('--runs-on <clock>', 'what the time between stops runs on (default: operating)').choices(['operating', 'calendar']),
      option('--short-below <seconds>', 'shorter stops are told apart', positiveNumber, 300),
      option('--by-place', 'all causes of a place together'),
    ],
    sample: [seedOption()],
    output: [writeOption('write the stops for a scenario, with where they come from'), ...outputOptions()],
  })
    .description('judge a stop log (.csv, .xlsx): time between, repair, availability, what the ends of the log cut off; runs nothing')
    .action(telling(context, async () => (await import('./commands/data/stoplog.ts')).stoplog))
}

function addMix(root: Command, context: ProgramContext): void {
  const without = ['--unit', '--clock']
  addOptions(root.command('mix <files...>'), {
    line: tableOptions('variant=Model, units=Pieces').filter(({ long }) => !without.includes(long ?? '')),
    question: [
      option('--work <times>', 'work of each product where the line is slowest, such as "small=50, large=64"', shortestTimes),
      option('--round <count>', 'units of a round of the levelled order, at most', wholeNumber, 20),
    ],
    output: [writeOption('write the products for a scenario, and the heaviest stretches as lists'), ...outputOptions()],
  })
    .description('judge orders or a plan (.csv, .xlsx): shares, options, levelled order, the heaviest hour, day and week; runs nothing')
    .action(telling(context, async () => (await import('./commands/data/mix.ts')).mix))
}

function addAssemble(root: Command, context: ProgramContext): void {
  addOptions(root.command('assemble <skeleton>'), {
    line: [
      ...lineOptions(),
      option('--data <folder>', 'tables whose names begin with times, stops or orders', fileName).makeOptionMandatory(),
      ...dataOptions(),
    ],
    sample: sampleOptions(30),
    output: [writeOption('write the complete scenario; where one is there, what the data changed is told'), ...outputOptions()],
    machine: machineOptions(),
  })
    .description('put a folder of data into the skeleton of a scenario, each value with where it comes from')
    .action(simulating(context, async () => (await import('./commands/data/assemble.ts')).assemble))
}
