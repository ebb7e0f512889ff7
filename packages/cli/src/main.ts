/** From arguments to exit code. */
import { shellWord, styledText, visibleText } from '@loopwright/charts/table'
import { CommanderError } from 'commander'
import { program } from './program.ts'
import { DONE, FAILED, Failure, INTERRUPTED, MISUSE, Misuse, type Shell, Stopped } from './shell/shell.ts'
import { wrapText } from './shell/wrapText.ts'

/**
 * Runs the command.
 *
 * @param words  the arguments, without node and the file
 * @returns      exit code: 0 done, 1 failed, 2 wrong use or wrong scenario, 130 stopped
 */
export async function main(words: readonly string[], shell: Shell): Promise<number> {
  let code = DONE
  const command = ['loopwright', ...words.map(shellWord)].join(' ')
  try {
    if (words[0] === '--version') {
      shell.out.write(`${(await import('./shell/version.ts')).versionLine()}\n`)
      return DONE
    }
    const root = program(shell, command, (ended) => {
      code = ended
    })
    await root.parseAsync([...words], { from: 'user' })
    return code
  } catch (error) {
    return tellError(error, shell)
  }
}

function tellError(error: unknown, shell: Shell): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? DONE : MISUSE
  if (error instanceof Stopped) {
    shell.err.write(`${wrapText(visibleText(error.message), shell.err.columns)}\n`)
    return INTERRUPTED
  }
  if (error instanceof Misuse || error instanceof Failure || isWantOfMemory(error)) {
    const { colour, columns } = shell.err
    const [first = '', ...rest] = wrapText(visibleText(error.message.trimEnd()), columns).split('\n')
    shell.err.write(`${[styledText(first, 'bad', colour), ...rest].join('\n')}\n`)
    return error instanceof Misuse ? MISUSE : FAILED
  }
  const told = error instanceof Error ? (error.stack ?? error.message) : String(error)
  shell.err.write(`loopwright failed, which is a defect of loopwright or of the notebook's own code:\n${told}\n`)
  return FAILED
}

/** Of a thread of the study: no defect of ours, so it is told without a stack. */
const isWantOfMemory = (error: unknown): error is Error => error instanceof Error && error.name === 'OutOfMemory'
