/** The commands of decision files: what an alternative is worth, what needs a closer look. */
import type { Command, Option } from 'commander'
import { type ProgramContext, simulating } from './actions.ts'
import { countList, fileName } from './options/arguments.ts'
import {
  addOptions,
  COMMAND_GROUPS,
  option,
  outputOptions,
  keptOptions,
  sampleOptions,
  sharedOptions,
  workersOption,
  yesOption,
} from './options/options.ts'

const machine = (): Option[] => [workersOption(), yesOption(), ...sharedOptions(), ...keptOptions()]

/** a decision has at least so many alternatives */
const ALTERNATIVES_MIN = 2

/** Adds the commands, in the order in which people ask. */
export function addMeetings(root: Command, context: ProgramContext): void {
  root.commandsGroup(COMMAND_GROUPS.sign)

  addOptions(root.command('payback <file>'), { sample: sampleOptions(200), output: outputOptions(), machine: machine() })
    .description('say what the alternatives of a decision file are worth against today: payback, net present value, break-even')
    .action(simulating(context, async () => (await import('./commands/decision/payback.ts')).payback, ALTERNATIVES_MIN))

  addOptions(root.command('criteria <file>'), { sample: sampleOptions(100), output: outputOptions(), machine: machine() })
    .description('weigh the alternatives of a decision file: must-haves, scores, and how much the winner hangs on the weights')
    .action(simulating(context, async () => (await import('./commands/decision/criteria.ts')).criteria, ALTERNATIVES_MIN))

  addOptions(root.command('screen <file>'), { sample: sampleOptions(20), output: outputOptions(), machine: machine() })
    .description('compare forces, heights, gaps, distances and speeds of a decision file with published guidance; no verdict on hazards')
    .action(simulating(context, async () => (await import('./commands/decision/screen.ts')).screen, ALTERNATIVES_MIN))
  addPromises(root, context)
}

/** What is promised, and whether it is kept. */
function addPromises(root: Command, context: ProgramContext): void {
  addOptions(root.command('promise <file>'), { sample: sampleOptions(400), output: outputOptions(), machine: machine() })
    .description(
      'say on one page what is promised of the alternative that a decision file names, what it rests on, and until when it holds',
    )
    .action(simulating(context, async () => (await import('./commands/decision/promise.ts')).promise))

  addOptions(root.command('acceptance <file>'), { sample: sampleOptions(400), output: outputOptions(), machine: machine() })
    .description('plan the acceptance: the band of a trial, from what count on it is passed, and how often that is wrong')
    .action(simulating(context, async () => (await import('./commands/decision/acceptance.ts')).acceptance))

  addOptions(root.command('trial <file>'), {
    question: [option('--counts <units>', 'units so far at each look, such as 20,41,63', countList).makeOptionMandatory()],
    sample: sampleOptions(400),
    output: outputOptions(),
    machine: machine(),
  })
    .description('say while a trial runs whether it goes on, may end, or is passed')
    .action(simulating(context, async () => (await import('./commands/decision/acceptance.ts')).trial))

  addOptions(root.command('followup <file>'), {
    question: [
      option('--weeks <table>', 'counted weeks, a CSV file: week, units, shifts', fileName).makeOptionMandatory(),
      option('--stations <table>', 'measured stations, a CSV file: station, seconds, n, sd; perhaps blocked and starved in %', fileName),
      option('--stops <table>', 'counted stops, a CSV file: stop, count, minutes, shifts', fileName),
      option('--write <file>', 'write the recalibrated scenario', fileName),
    ],
    sample: sampleOptions(200),
    output: outputOptions(),
    machine: machine(),
  })
    .description('set counted weeks beside the forecast: whether the promise still stands, what to measure again, a recalibrated scenario')
    .action(simulating(context, async () => (await import('./commands/decision/followup.ts')).followup))
}
