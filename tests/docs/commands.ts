import type { Block } from './markdown.ts'

/** A command that a document shows, cut into words; the comment behind it is left out. */
export interface Command {
  readonly file: string
  readonly line: number
  readonly words: readonly string[]
}

/** The commands of a `sh` block; a line that ends in `\` goes on in the next. */
export function commandsOf(block: Block): Command[] {
  if (block.language !== 'sh') return []
  const commands: Command[] = []
  let held = ''
  block.text.split('\n').forEach((text, index) => {
    const line = held + text.replace(/(^|\s)#.*$/, '')
    if (line.endsWith('\\')) {
      held = line.slice(0, -1)
      return
    }
    held = ''
    for (const one of line.split('&&')) {
      const words = one.trim().split(/\s+/)
      if (words[0] !== '') commands.push({ file: block.file, line: block.line + index, words })
    }
  })
  return commands
}

/**
 * What is wrong with a command, as sentences.
 *
 * @param scripts  names of the scripts of package.json
 * @param helpOf   the help text of a subcommand of ours; of the whole for ''
 */
export function commandFaults(command: Command, scripts: readonly string[], helpOf: (subcommand: string) => string): string[] {
  const [first, second = '', third = ''] = command.words
  const at = `${command.file}:${command.line}:`
  if (first === 'npm') {
    if (second === 'ci') return []
    const script = second === 'run' ? third : second
    return scripts.includes(script) ? [] : [`${at} there is no script "${script}"`]
  }
  if (first !== 'npx') return []
  if (second !== 'loopwright') return ['vitest', 'biome', 'tsc'].includes(second) ? [] : [`${at} "npx ${second}" is not installed here`]
  const subcommand = third.startsWith('-') ? '' : third
  if (subcommand !== '' && !new RegExp(`^\\s+${subcommand}\\b`, 'm').test(helpOf(''))) return [`${at} there is no command "${subcommand}"`]
  const known = new Set(helpOf(subcommand).match(/(?<![\w-])--?[a-z][\w-]*/g) ?? [])
  return command.words
    .filter((word) => /^--?[a-z]/.test(word))
    .map((word) => word.replace(/=.*$/, ''))
    .filter((option) => !known.has(option))
    .map((option) => `${at} "${subcommand}" has no option ${option}`)
}
