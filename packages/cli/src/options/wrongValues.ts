/** Values that options do not take, told all at once: the reader of words ends at the first that is refused. */
import { type Command, InvalidArgumentError } from 'commander'

/**
 * Lets every option of every command keep what it refuses, until all words are read.
 *
 * @returns  what was refused, as the reader of words says it, in the order of the words
 */
export function keepWrongValues(root: Command): readonly string[] {
  const kept: string[] = []
  for (const command of root.commands)
    for (const option of command.options) {
      const { parseArg } = option
      if (parseArg === undefined) continue
      option.argParser((value: string, before: unknown) => {
        try {
          return parseArg(value, before)
        } catch (error) {
          if (!(error instanceof InvalidArgumentError)) throw error
          kept.push(`error: option '${option.flags}' argument '${value}' is invalid. ${error.message}`)
          return before
        }
      })
    }
  root.hook('preAction', (_, chosen) => {
    if (kept.length > 0) chosen.error(kept[0]!)
  })
  return kept
}

/** A refusal, and what else was refused before it could be told. */
export const withOthers = (text: string, kept: readonly string[]): readonly string[] => [
  text,
  ...kept.flatMap((other) => (text.trimEnd() === other ? [] : [`${other}\n`])),
]
