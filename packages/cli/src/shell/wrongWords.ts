/** What is said to words that the command does not take: what was found, and what would be right. */
import { visibleLine } from '@loopwright/charts/table'
import { renamedOption } from '../options/renamedOptions.ts'
import type { Stream } from './shell.ts'
import { wrapText } from './wrapText.ts'

/**
 * The sentence of the reader of words, in ours.
 *
 * @param text     such as `error: unknown option '--mine'` and a line end
 * @param command  as it was typed
 */
export function wrongWords(text: string, command: string, { columns }: Pick<Stream, 'columns'>): string {
  return wrapText(ours(text, /^loopwright (\S+)/.exec(command)?.[1] ?? ''), columns)
}

function ours(text: string, command: string): string {
  const option = /unknown option '(--[\w-]+)(?:=.*)?'/.exec(text)?.[1]
  const renamed = option === undefined ? null : renamedOption(command, option)
  if (renamed !== null) return `${renamed}\n`
  return text
    .replace(/^error: /, '')
    .replace(
      /^option '(?:-\w, )?(--[\w-]+)[^']*' argument '(.*)' is invalid\. /s,
      (_, name: string, value: string) => `${name} "${visibleLine(value)}": `,
    )
}
