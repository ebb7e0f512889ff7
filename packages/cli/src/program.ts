/** The command line: names, options, examples. What a command does is in its file under commands/. */
import { Command, Option } from 'commander'
import { carrierCounts, percent, replicationNumber, seedText, wholeNumber } from './arguments.ts'
import { SCHEMAS } from './commands/schema.ts'
import { nameList } from './orderRules.ts'
import type { Shell } from './shell.ts'
import { addStudies, engineOption, threaded } from './studyProgram.ts'
import { wrapText } from './wrapText.ts'

const VARIATION = ['--variation <name>', 'with a named set of changed values from the file'] as const
const STORE = ['--store <folder>', 'where finished replications are kept (default: .loopwright)'] as const
const FRESH = ['--fresh', 'run everything again, keep nothing'] as const
const SEED = '1'
const RUN_REPLICATIONS = 1
const SWEEP_REPLICATIONS = 100

/**
 * The program.
 *
 * @param command  the command as it was typed, for the page's footer
 * @param onCode   told the exit code of the command that was run
 */
export function program(shell: Shell, command: string, onCode: (code: number) => void): Command {
  const root = new Command('loopwright')
    .description('Simulates zoned accumulation conveyor loops: how many carriers, which station order, what throughput.')
    .exitOverride()
    .configureOutput({
      writeOut: shell.out.write,
      writeErr: (text) => shell.err.write(wrapText(text)),
      getOutHelpWidth: () => 80,
      getErrHelpWidth: () => 80,
    })
    .showHelpAfterError('(loopwright --help tells more)')
    .addHelpText('after', examples('check line.yaml', 'carriers line.yaml --out out/carriers.html'))

  root
    .command('check <file>')
    .description('say what was understood of a scenario: loop, stations, takt, the law of the loop')
    .addHelpText('after', examples('check line.yaml'))
    .option(...VARIATION)
    .action(async (file: string, flags) => onCode(await (await import('./commands/check.ts')).check(shell, file, flags)))

  root
    .command('resolve <file>')
    .description('print the complete form of a scenario, with every default and where it came from')
    .addHelpText('after', examples('resolve line.yaml > complete.yaml'))
    .option(...VARIATION)
    .action(async (file: string, flags) => onCode(await (await import('./commands/resolve.ts')).resolve(shell, file, flags)))

  outputs(root.command('run <file>'), RUN_REPLICATIONS)
    .description('run the line as it stands: one run in full, or means over several')
    .option('--trace', 'add every event to --json or --csv (one replication)')
    .addHelpText(
      'after',
      examples('run line.yaml', 'run line.yaml --json --trace > run.json', 'run line.yaml --replications 100 --out out/run.html'),
    )
    .action(async (file: string, flags) =>
      onCode(await threaded(flags, flags.replications, async (all) => (await import('./commands/run.ts')).run(shell, file, all, command))),
    )

  root
    .command('trace <file>')
    .description('tell every event of one run, in plain words or as one JSON record a line')
    .option('--carrier <numbers>', 'only of these carriers, such as 3 or 0,3', nameList)
    .option('--station <names>', 'only at these stations, such as S6', nameList)
    .option('--zone <names>', 'only at these zones, such as Z05,Z06', nameList)
    .option('--from <time>', 'from this time of the run on, such as "1 h"')
    .option('--to <time>', 'up to this time, such as "1.2 h"')
    .option('--replication <number>', 'which of the random worlds, from 0', replicationNumber, 0)
    .option('--seed <text>', 'names the random worlds', seedText, SEED)
    .option(...VARIATION)
    .option('--json', 'print one JSON record a line, in full precision')
    .option('--out <file>', 'write the lines to a file; one that ends in .html gets a picture: zones over time')
    .addHelpText(
      'after',
      examples(
        'trace line.yaml --station S6 --from "1 h" --to "1.2 h"',
        'trace line.yaml --carrier 3',
        'trace line.yaml --from "9 h" --to "9.25 h" --out out/trace.html',
        'trace line.yaml --json > events.ndjson',
      ),
    )
    .action(async (file: string, flags) => onCode(await (await import('./commands/trace.ts')).trace(shell, file, flags, command)))

  outputs(root.command('sweep <file>'), SWEEP_REPLICATIONS)
    .description('try numbers of carriers in the same random worlds: the curve, with as many runs as you say')
    .option('--carriers <counts>', 'which to try, such as 5..18 or 5,8,12 (default: around the lower knee of the law)', carrierCounts)
    .addHelpText(
      'after',
      examples(
        'sweep line.yaml --carriers 5..18',
        'sweep line.yaml --replications 200 --seed 7 --out out/sweep.html',
        'sweep line.yaml --json > sweep.json',
        'sweep line.yaml --csv out/tables',
      ),
    )
    .action(async (file: string, flags) =>
      onCode(
        await threaded(flags, flags.replications * (flags.carriers?.length ?? 1), async (all) =>
          (await import('./commands/sweep.ts')).sweep(shell, file, all, command),
        ),
      ),
    )

  common(root.command('carriers <file>'))
    .description('how many carriers the loop needs, with as many runs as the answer takes')
    .option('--within <percent>', 'how far below the best output is near enough', percent, 1)
    .option('--level <percent>', 'confidence of the answer', percent, 95)
    .option('--carriers <counts>', 'where to begin, such as 5..18 (default: around the lower knee of the law)', carrierCounts)
    .option('--replications <count>', 'most per number of carriers (default: 1000)', wholeNumber)
    .addHelpText(
      'after',
      examples('carriers line.yaml', 'carriers line.yaml --within 2 --out out/carriers.html', 'carriers line.yaml --json > carriers.json'),
    )
    .action(async (file: string, flags) =>
      onCode(
        await threaded(flags, Number.POSITIVE_INFINITY, async (all) =>
          (await import('./commands/carriers.ts')).carriers(shell, file, all, command),
        ),
      ),
    )

  addStudies(root, { shell, command, onCode })

  root
    .command('notebook <file>')
    .description('run a notebook (a TypeScript module): its cells to the terminal, its page to a file')
    .option('--replications <count>', 'in place of what the notebook asks for', wholeNumber)
    .option('--seed <text>', 'in place of what the notebook asks for', seedText)
    .option('--workers <count>', 'threads (default: one per core)', wholeNumber)
    .option('--out <file>', 'where the page goes (default: out/<notebook>.html)')
    .option(...STORE)
    .option(...FRESH)
    .addHelpText('after', examples('notebook notebooks/how-many-carriers.ts'))
    .action(async (file: string, flags) => onCode(await (await import('./commands/notebook.ts')).notebook(shell, file, flags, command)))

  const store = root
    .command('store')
    .description('what is kept of finished replications')
    .addHelpText('after', examples('store info', 'store prune'))
  store
    .command('info')
    .description('say how much is kept, and for which engine')
    .option(...STORE)
    .addHelpText('after', examples('store info'))
    .action(async (flags) => onCode(await (await import('./commands/store.ts')).storeInfo(shell, flags)))
  store
    .command('prune')
    .description('remove what no run can use: of other engines, damaged, half written')
    .option('--older-than <days>', 'also what was written longer ago', wholeNumber)
    .option('--all', 'everything')
    .option(...STORE)
    .addHelpText('after', examples('store prune', 'store prune --older-than 30'))
    .action(async (flags) => onCode(await (await import('./commands/store.ts')).storePrune(shell, flags)))

  root
    .command('schema')
    .description('print a JSON Schema')
    .addOption(new Option('--of <document>', 'of scenario files, or of what --json prints').choices(SCHEMAS).default('scenario'))
    .addHelpText('after', examples('schema > scenario.schema.json', 'schema --of sweep'))
    .action(async (flags) => onCode(await (await import('./commands/schema.ts')).schema(shell, flags.of)))

  return root
}

/** Options that runs and sweeps share. */
function outputs(command: Command, replications: number): Command {
  return common(command).option('--replications <count>', 'random worlds to run', wholeNumber, replications)
}

function common(command: Command): Command {
  return command
    .option(...VARIATION)
    .option('--seed <text>', 'names the random worlds', seedText, SEED)
    .option('--workers <count>', 'threads; changes no result (default: one per core)', wholeNumber)
    .addOption(engineOption())
    .option('--json', 'print one JSON document, in full precision')
    .option('--csv <folder>', 'write tables as CSV files')
    .option('--out <file>', 'write the page, one HTML file')
    .option(...STORE)
    .option(...FRESH)
}

const examples = (...lines: readonly string[]): string => `\nExamples:\n${lines.map((line) => `  loopwright ${line}`).join('\n')}`
