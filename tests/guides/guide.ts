/**
 * A guide as a document: commands, what they print, files that it makes, pictures that they draw. Written anew, it tells what the program tells today.
 *
 * In a guide a block `sh` is carried out, line by line. A block `text` behind it holds what it prints: all of it, or the paragraphs that the comment before the
 * block names, as in `<!-- paragraphs 1, 4 -->`. A block `yaml` behind `<!-- file NAME -->` becomes that file. A picture `![…](pictures/GUIDE-FIGURE.svg)` is
 * the file `FIGURE.svg` of the last `--svg`. A block `sh` behind `<!-- shown only: REASON -->` is not carried out.
 */
import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { TOP } from '../tidy/sources.ts'

export interface Guide {
  readonly text: string
  /** by name, without its ending */
  readonly pictures: ReadonlyMap<string, string>
}

const bin = join(TOP, 'packages/cli/bin/loopwright.js')
const PICTURE = /^!\[.*\]\(pictures\/([\w-]+)\.svg\)$/
const COMMENT = /^<!-- (?:paragraphs (?<paragraphs>[\d, ]+)|file (?<file>[\w./-]+)|shown only: .+) -->$/

/**
 * The guide with everything in it that the program makes.
 *
 * @param text    of the document
 * @param name    of the guide, which begins the names of its pictures
 * @param folder  in which its commands are carried out; holds scenarios and notebooks
 * @throws Error  where a command fails, or draws no such figure
 */
export function writtenAnew(text: string, name: string, folder: string): Guide {
  const pictures = new Map<string, string>()
  const made: string[] = []
  const lines = text.split('\n')
  let printed = ''
  let drawnIn = ''
  let comment: RegExpExecArray | null = null
  for (let at = 0; at < lines.length; at++) {
    const line = lines[at]!
    const fence = /^```(\w+)$/.exec(line)
    const picture = PICTURE.exec(line)?.[1]
    if (picture !== undefined) {
      const svg = readFileSync(join(folder, drawnIn, `${picture.slice(name.length + 1)}.svg`), 'utf8')
      pictures.set(picture, svg)
      made.push(`![${alternative(svg)}](pictures/${picture}.svg)`)
    } else if (fence === null) made.push(line)
    else {
      const end = lines.indexOf('```', at)
      const inside = lines.slice(at + 1, end)
      made.push(line, ...(fence[1] === 'text' ? shown(printed, comment?.groups?.paragraphs) : inside), '```')
      at = end
      if (fence[1] === 'yaml' && comment?.groups?.file !== undefined) writeIn(folder, comment.groups.file, inside)
      if (fence[1] === 'sh' && comment === null) {
        const commands = commandsIn(inside)
        printed = commands
          .map((words) => carriedOut(words, folder))
          .filter((told) => told !== '')
          .join('\n')
        drawnIn = commands.map((words) => words[words.indexOf('--svg') + 1]!).at(-1)!
      }
    }
    comment = COMMENT.exec(line)
  }
  return { text: made.join('\n'), pictures }
}

/** The words of each command; a line that ends in `\` goes on in the next, and `#` begins a remark. */
export const commandsIn = (lines: readonly string[]): string[][] =>
  lines
    .join('\n')
    .replaceAll(/\\\n/g, ' ')
    .split('\n')
    .map((line) => [...line.replace(/(^|\s)#.*$/, '').matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!))
    .filter((words) => words.length > 0)

function carriedOut(words: readonly string[], folder: string): string {
  const [npx, ours, ...rest] = words
  if (npx !== 'npx' || ours !== 'loopwright') throw new Error(`"${words.join(' ')}" is no command of ours`)
  const { status, stdout, stderr } = spawnSync(process.execPath, [bin, ...rest], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
  })
  if (status !== 0) throw new Error(`"${words.join(' ')}" ends with ${status}:\n${stderr}`)
  return stdout.replaceAll(/[^\S\n]+$/gm, '').trim()
}

/** What is left out between paragraphs is shown as a line of its own. */
function shown(printed: string, paragraphs: string | undefined): string[] {
  const all = printed.split('\n\n')
  if (paragraphs === undefined) return printed.split('\n')
  const wanted = paragraphs.split(',').map(Number)
  const told = wanted.flatMap((number, index) => {
    const paragraph = all[number - 1]
    if (paragraph === undefined) throw new Error(`there are ${all.length} paragraphs, and no ${number}`)
    return [...(number === (wanted[index - 1] ?? 0) + 1 ? [] : ['…', '']), ...paragraph.split('\n'), '']
  })
  return wanted.at(-1) === all.length ? told.slice(0, -1) : [...told, '…']
}

/** What the program says of its picture to those who do not see it. */
function alternative(svg: string): string {
  const label = /aria-label="([^"]*)"/.exec(svg)![1]!
  const plain = label.replaceAll('&quot;', '"').replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&')
  return plain.replaceAll(/[[\]]/g, '\\$&')
}

function writeIn(folder: string, file: string, lines: readonly string[]): void {
  const path = join(folder, file)
  mkdirSync(dirname(path), { recursive: true })
  if (existsSync(path)) throw new Error(`"${file}" is there already`)
  writeFileSync(path, `${lines.join('\n')}\n`)
}
