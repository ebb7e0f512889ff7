/** The commands that bring measured data: names, options, examples. */
import type { Command } from 'commander'
import { type ProgramContext, paged } from './actions.ts'
import { percent } from './options/arguments.ts'
import { examplesOf } from './options/examples.ts'
import { addOptions, COMMAND_GROUPS, option, outputOptions, seedOption } from './options/options.ts'
import { sharePercent, shortestTimes, tableOptions, writeOption } from './options/tableOptions.ts'

/** Adds the commands, in the order in which data are met. */
export function addMeasuring(root: Command, context: ProgramContext): void {
  root.commandsGroup(COMMAND_GROUPS.measure)
  addTimes(root, context)
}

function addTimes(root: Command, context: ProgramContext): void {
  const { shell, command } = context
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
    .addHelpText('after', examplesOf('times'))
    .action(
      async (files: string[], flags) =>
        await paged(context, flags, async () => (await import('./commands/times.ts')).times(shell, files, flags, command)),
    )
}
