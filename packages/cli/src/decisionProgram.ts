/** The commands of decision files: what an alternative is worth, what needs a closer look. */
import type { Command } from 'commander'
import { type ProgramContext, threaded } from './actions.ts'
import { examplesOf } from './options/examples.ts'
import { addOptions, COMMAND_GROUPS, outputOptions, keptOptions, sampleOptions, workersOption } from './options/options.ts'

/** a decision has at least so many alternatives */
const ALTERNATIVES_MIN = 2

/** Adds the commands, in the order in which people ask. */
export function addMeetings(root: Command, context: ProgramContext): void {
  const { shell, command } = context
  root.commandsGroup(COMMAND_GROUPS.sign)
  const machine = () => [workersOption(), ...keptOptions()]

  addOptions(root.command('payback <file>'), { sample: sampleOptions(200), output: outputOptions(), machine: machine() })
    .description('say what the alternatives of a decision file are worth against today: payback, net present value, break-even')
    .addHelpText('after', examplesOf('payback'))
    .action(
      async (file: string, flags) =>
        await threaded(context, flags, ALTERNATIVES_MIN * flags.replications, async (all) =>
          (await import('./commands/payback.ts')).payback(shell, file, all, command),
        ),
    )

  addOptions(root.command('screen <file>'), { sample: sampleOptions(20), output: outputOptions(), machine: machine() })
    .description('compare forces, heights, gaps, distances and speeds of a decision file with published guidance; no verdict on hazards')
    .addHelpText('after', examplesOf('screen'))
    .action(
      async (file: string, flags) =>
        await threaded(context, flags, ALTERNATIVES_MIN * flags.replications, async (all) =>
          (await import('./commands/screen.ts')).screen(shell, file, all, command),
        ),
    )
}
