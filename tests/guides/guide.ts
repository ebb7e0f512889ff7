/**
 * A guide as a document: commands, what they print, files that it makes, pictures that they draw. Written anew, it tells what the program tells today.
 *
 * In a guide a block `sh` is carried out, line by line. A block `text` behind it holds what it prints: all of it, or the paragraphs that the comment before the
 * block names, as in `<!-- paragraphs 1, 4 -->`. A block `yaml` behind `<!-- file NAME -->` becomes that file. A picture `![…](pictures/GUIDE-FIGURE.svg)` is
 * the file `FIGURE.svg` of the last `--svg`. A block `sh` behind `<!-- shown only: REASON -->` is not carried out.
 */
import type { Place } from './places.ts'

export interface Guide {
  readonly text: string
  /** by name, without its ending */
  readonly pictures: ReadonlyMap<string, string>
}

const PICTURE = /^!\[.*\]\(pictures\/([\w-]+)\.svg\)$/
const COMMENT = /^<!-- (?:paragraphs (?<paragraphs>[\d, ]+)|file (?<file>[\w./-]+)|shown only: .+) -->$/

/**
 * The guide with everything in it that the program makes.
 *
 * @param text   of the document
 * @param name   of the guide, which begins the names of its pictures
 * @param place  in which its commands are carried out; holds scenarios and notebooks
 * @throws Error  where a command fails, or draws no such figure
 */
export async function writtenAnew(text: string, name: string, place: Place): Promise<Guide> {
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
      const svg = place.read(`${drawnIn}/${picture.slice(name.length + 1)}.svg`)
      pictures.set(picture, svg)
      made.push(`![${alternative(svg)}](pictures/${picture}.svg)`)
    } else if (fence === null) made.push(line)
    else {
      const end = lines.indexOf('```', at)
      const inside = lines.slice(at + 1, end)
      made.push(line, ...(fence[1] === 'text' ? shown(printed, comment?.groups?.paragraphs) : inside), '```')
      at = end
      if (fence[1] === 'yaml' && comment?.groups?.file !== undefined) place.write(comment.groups.file, `${inside.join('\n')}\n`)
      if (fence[1] === 'sh' && comment === null) {
        const commands = commandsIn(inside)
        const told: string[] = []
        for (const words of commands) told.push(await carriedOut(words, place))
        printed = told.filter((each) => each !== '').join('\n')
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

async function carriedOut(words: readonly string[], place: Place): Promise<string> {
  const [npx, ours, ...rest] = words
  if (npx !== 'npx' || ours !== 'loopwright') throw new Error(`"${words.join(' ')}" is no command of ours`)
  const { code, out, err } = await place.carryOut(rest)
  if (code !== 0) throw new Error(`"${words.join(' ')}" ends with ${code}:\n${err}`)
  return out.replaceAll(/[^\S\n]+$/gm, '').trim()
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
