/** The commands of the studies: names, options, examples. */
import type { Command } from 'commander'
import { seedText, wholeNumber } from './arguments.ts'
import type { Shell } from './shell.ts'

const SEED = '1'

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
    .action(async (files: string[], flags) => onCode(await (await import('./commands/compare.ts')).compare(shell, files, flags, command)))
}

function studyOptions(command: Command, replications: number): Command {
  return command
    .option('--replications <count>', 'random worlds to run', wholeNumber, replications)
    .option('--seed <text>', 'names the random worlds', seedText, SEED)
    .option('--workers <count>', 'threads; changes no result (default: one per core)', wholeNumber)
    .option('--json', 'print one JSON document, in full precision')
    .option('--out <file>', 'write the page, one HTML file')
}

const examples = (...lines: readonly string[]): string => `\nExamples:\n${lines.map((line) => `  loopwright ${line}`).join('\n')}`
