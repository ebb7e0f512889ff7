/** The command line: names, options, examples. What a command does is in its file under commands/; the commands that decide are in studyProgram.ts. */
import { Command, Option } from 'commander'
import { type ProgramContext, simulating, telling, threaded } from './actions.ts'
import {
  eventsFile,
  nameList,
  pageFile,
  portNumber,
  positiveNumber,
  replicationNumber,
  seedText,
  wholeNumber,
} from './options/arguments.ts'
import { SCHEMAS } from './documents/schemaNames.ts'
import { examplesOf } from './options/examples.ts'
import {
  addOptions,
  COMMAND_GROUPS,
  csvOptions,
  handoutOptions,
  keptOptions,
  lineOptions,
  machineOptions,
  option,
  outputOptions,
  plainOption,
  pageOptions,
  sampleOptions,
  seedOption,
  sharedOptions,
  unsharedOptions,
  storeOption,
  workersOption,
  yesOption,
} from './options/options.ts'
import { keepWrongValues, withOthers } from './options/wrongValues.ts'
import { isShared } from './machineFlags.ts'
import { Misuse, type Shell } from './shell/shell.ts'
import { addMeasuring } from './measureProgram.ts'
import { addMeetings } from './decisionProgram.ts'
import { addDecisions } from './studyProgram.ts'
import { STDIN, typedFiles } from './shell/standardInput.ts'
import { wrongWords } from './shell/wrongWords.ts'

const RUN_REPLICATIONS = 1

/**
 * The program.
 *
 * @param command  the command as it was typed, for the page's footer
 * @param onCode   told the exit code of the command that was run
 */
export function program(shell: Shell, command: string, onCode: (code: number) => void): Command {
  let wrong: readonly string[] = []
  const root = new Command('loopwright')
    .description('Simulates zoned accumulation conveyor loops: how many carriers, which station order, what throughput.')
    .exitOverride()
    .configureOutput({
      writeOut: shell.out.write,
      writeErr: shell.err.write,
      outputError: (text, write) =>
        write(
          withOthers(text, wrong)
            .map((one) => wrongWords(one, command, shell.err))
            .join(''),
        ),
      getOutHelpWidth: () => shell.out.columns,
      getErrHelpWidth: () => shell.err.columns,
    })
    // else nothing is wrapped where a terminal is narrow
    .configureHelp({ minWidthToWrap: 20 })
    .showHelpAfterError('(loopwright --help tells more)')
    .option('--version', 'say which version this is, of the command and of the engine')
    .helpOption('-h, --help', 'show this')
    .addHelpText('after', examplesOf(''))
  const context = { shell, command, onCode }
  addUnderstanding(root, context)
  addMeasuring(root, context)
  addSimulation(root, context)
  addDecisions(root, context)
  addMeetings(root, context)
  addKeeping(root, context)
  addMachines(root, context)
  addNotebooks(root, context)
  wrong = keepWrongValues(root)
  root.hook('preAction', (_, chosen) => filesAsTyped(chosen))
  return root.addHelpCommand(root.createCommand('help').argument('[command]').description('show the help of a command').helpGroup('Help:'))
}

/** Commands whose file is a program, which is found by its place. */
const PROGRAMS: readonly string[] = ['notebook']

/** `-` in the place of a file is standard input, whatever the command. */
function filesAsTyped(chosen: Command): void {
  const { registeredArguments, processedArgs } = chosen
  for (const [index, argument] of registeredArguments.entries()) {
    if (!/^(files?|skeleton)$/.test(argument.name())) continue
    const typed = processedArgs[index] as string | readonly string[]
    const files = typedFiles(typeof typed === 'string' ? [typed] : typed)
    if (files.includes(STDIN) && PROGRAMS.includes(chosen.name()))
      throw new Misuse(`${chosen.name()} takes a file: a notebook is a module, whose place says what it imports; "-" is none`)
    processedArgs[index] = typeof typed === 'string' ? files[0] : files
  }
}

/** What a line is, before anything runs. */
function addUnderstanding(root: Command, context: ProgramContext): void {
  const { shell, onCode } = context
  root.commandsGroup(COMMAND_GROUPS.understand)
  addOptions(root.command('check <file>'), { line: lineOptions(), output: [...csvOptions(), ...pageOptions()] })
    .description('say what was understood of a scenario, what limits the line by its mean times, and what looks wrong; runs nothing')
    .action(telling(context, async () => (await import('./commands/check.ts')).check))

  addOptions(root.command('resolve <file>'), { line: lineOptions() })
    .description('print the complete form of a scenario, with every default and where it came from')
    .action(async (file: string, flags) => onCode(await (await import('./commands/resolve.ts')).resolve(shell, file, flags)))

  addOptions(root.command('schema'), {
    question: [new Option('--of <document>', 'of scenario files, or of what --json prints').choices(SCHEMAS).default('scenario')],
  })
    .description('print a JSON Schema')
    .action(async (flags) => onCode(await (await import('./commands/schema.ts')).schema(shell, flags.of)))
}

/** One line as it stands. */
function addSimulation(root: Command, context: ProgramContext): void {
  const { shell, command } = context
  root.commandsGroup(COMMAND_GROUPS.simulate)
  addOptions(root.command('run <file>'), {
    line: lineOptions(),
    sample: sampleOptions(RUN_REPLICATIONS),
    output: [option('--trace', 'add every event to --json or --csv (one replication)'), plainOption(), ...outputOptions()],
    machine: machineOptions(),
  })
    .description('run the line as it stands: one run in full, or means over several')
    .action(simulating(context, async () => (await import('./commands/run.ts')).run))

  addOptions(root.command('trace <file>'), {
    line: lineOptions(),
    question: [
      option('--carrier <numbers>', 'only of these carriers, such as 3 or 0,3', nameList),
      option('--station <names>', 'only at these stations, such as S6', nameList),
      option('--zone <names>', 'only at these zones, such as Z05,Z06', nameList),
      option('--from <time>', 'from this time of the run on, such as "1 h"'),
      option('--to <time>', 'up to this time, such as "1.2 h"'),
    ],
    sample: [option('--replication <number>', 'which of the simulated shifts of the seed, from 0', replicationNumber, 0), seedOption()],
    output: [
      option('--json', 'print one JSON record a line, in full precision'),
      ...csvOptions(),
      option('--out <file>', 'write the lines to a file; one that ends in .html gets a picture: zones over time', eventsFile),
      option('--open', 'open the picture in the browser when it is written'),
    ],
    machine: unsharedOptions(),
  })
    .description('tell every event of one run, in plain words or as one JSON record a line')
    .action(telling(context, async () => (await import('./commands/trace.ts')).trace))

  addOptions(root.command('steady <file>'), {
    line: lineOptions(),
    sample: [option('--runs <count>', 'long runs, at least 2', wholeNumber, 10), seedOption()],
    output: outputOptions(),
    machine: [workersOption(), yesOption(), ...sharedOptions(), ...keptOptions()],
  })
    .description('say how long the start of a run shows, what the line makes from then on, and what run length would do')
    .action(
      async (file: string, { runs, ...flags }) =>
        await threaded(context, { ...flags, replications: runs }, runs, async (all) =>
          (await import('./commands/steady.ts')).steady(shell, file, all, command),
        ),
    )
}

/** What is kept from one command to the next. */
function addKeeping(root: Command, { shell, onCode }: ProgramContext): void {
  root.commandsGroup(COMMAND_GROUPS.keep)
  const store = addOptions(root.command('store'), {}).description('what is kept of finished replications').commandsGroup('Commands:')
  addOptions(store.command('info'), { machine: [storeOption()] })
    .description('say how much is kept, and for which engine')
    .action(async (flags) => onCode(await (await import('./commands/store.ts')).storeInfo(shell, flags)))
  addOptions(store.command('merge <folders...>'), { machine: [storeOption()] })
    .description('put stores together: copy what the folders hold into one store')
    .action(async (folders: string[], flags) => onCode(await (await import('./commands/store.ts')).storeMerge(shell, folders, flags)))
  addOptions(store.command('prune'), {
    question: [option('--older-than <days>', 'also what was written longer ago', wholeNumber), option('--all', 'everything')],
    machine: [storeOption()],
  })
    .description('remove what no run can use: of other engines, damaged, half written')
    .action(async (flags) => onCode(await (await import('./commands/store.ts')).storePrune(shell, flags)))
}

/** Other machines that run studies. */
function addMachines(root: Command, { shell, onCode }: ProgramContext): void {
  root.commandsGroup(COMMAND_GROUPS.machines)
  const address = (): Option => option('--queue <address>', 'where the queue is, such as redis://plant-server').makeOptionMandatory()
  addOptions(root.command('work'), {
    question: [option('--idle <seconds>', 'end after so long without anything to do (default: never)', positiveNumber)],
    machine: [workersOption(), address()],
  })
    .description('run what studies ask for at a queue, until Ctrl-C')
    .action(async (flags) => onCode(await (await import('./commands/work.ts')).work(shell, flags)))
  const queue = addOptions(root.command('queue'), {}).description('what is at a queue of studies').commandsGroup('Commands:')
  addOptions(queue.command('info'), { machine: [address()] })
    .description('say who works, who asks, what waits and what is set aside')
    .action(async (flags) => onCode(await (await import('./commands/queue.ts')).queueInfo(shell, flags)))
  addOptions(queue.command('cancel'), { machine: [address()] })
    .description('take back everything that nobody has begun')
    .action(async (flags) => onCode(await (await import('./commands/queue.ts')).queueCancel(shell, flags)))
  addOptions(queue.command('retry'), { machine: [address()] })
    .description('let what was set aside be tried again')
    .action(async (flags) => onCode(await (await import('./commands/queue.ts')).queueRetry(shell, flags)))
}

function addNotebooks(root: Command, { shell, command, onCode }: ProgramContext): void {
  root.commandsGroup(COMMAND_GROUPS.program)
  addOptions(root.command('new <folder>'), {})
    .description('make a folder with a small line and a study of it, to go on from')
    .action(async (folder: string) => onCode(await (await import('./commands/new.ts')).makeNew(shell, folder)))
  addOptions(root.command('notebook <file>'), {
    sample: [
      option('--replications <count>', 'windows to simulate of each line or number of carriers, in place of what it asks for', wholeNumber),
      option('--seed <text>', 'in place of what it asks for', seedText),
    ],
    output: [
      ...csvOptions(),
      option('--out <file>', 'where the page goes (default: out/<notebook>.html)', pageFile),
      pageOptions()[1]!,
      ...handoutOptions(),
      option('--watch', 'serve the page on this machine alone, and bring it up to date with each save, until Ctrl-C'),
    ],
    machine: [
      workersOption(),
      option('--port <number>', 'the first that --watch tries (default: 8620)', portNumber),
      yesOption(),
      ...sharedOptions(),
      ...keptOptions(),
    ],
  })
    .description('run a notebook (a TypeScript module): its cells to the terminal, its page to a file')
    .action(async (file: string, flags) => {
      const run = flags.watch === true ? (await import('./commands/watch.ts')).watch : (await import('./commands/notebook.ts')).notebook
      const carry = async (all: typeof flags): Promise<number> => await run(shell, file, all, command)
      onCode(isShared(flags) ? await (await import('./machines.ts')).withMachines(shell, flags, carry) : await carry(flags))
    })
}
