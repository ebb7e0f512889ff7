/**
 * Wrong scenarios as cases of a document, `tests/golden/scenario/wrong/*.md`: a name, what is wrong, what differs from a right scenario, and the whole message.
 * The sentence is the first line of the file that is read, as a comment.
 */
import { readFileSync } from 'node:fs'

/** right scenarios that cases change: ten zones of a loop, and five zones joined by paths */
const BASES = ['loop', 'paths'] as const

export interface WrongCase {
  readonly name: string
  /** what is wrong */
  readonly sentence: string
  /** what is read */
  readonly text: string
  /** from the heading to the end of what is changed */
  readonly head: string
  /** as the document says it; empty for a case that is new */
  readonly message: string
}

export interface WrongDocument {
  /** all before the first case */
  readonly head: string
  readonly cases: readonly WrongCase[]
}

const CASE =
  /^(?<head>## (?<name>\S+)\n\n(?<sentence>.+)\n\n```(?<form>yaml|diff (?<base>\w+))\n(?<body>[\s\S]*?)```\n)(?:\n```text\n(?<message>[\s\S]*?)```\n)?\n*$/

/** @throws Error  if a case has another form, or changes what its base does not have */
export function parseWrong(document: string): WrongDocument {
  const [head, ...parts] = document.split(/^(?=## )/m)
  return { head: head!, cases: parts.map(parseCase) }
}

function parseCase(part: string): WrongCase {
  const found = CASE.exec(part)?.groups
  if (found === undefined) throw new Error(`no case of a wrong scenario:\n${part}`)
  const { head, name, sentence, base, body } = found as Record<string, string>
  const text = base === undefined ? body! : changed(baseText(base), body!)
  return { name: name!, sentence: sentence!, text: `# ${sentence}\n${text}`, head: head!, message: found.message ?? '' }
}

/** The document with a message for each of its cases. */
export function writeWrong({ head, cases }: WrongDocument, messages: readonly string[]): string {
  return [head, ...cases.map((one, k) => `${one.head}\n\`\`\`text\n${messages[k]}\`\`\`\n`)].join('\n').replace(/\n{3,}(?=## )/g, '\n\n')
}

function baseText(name: string): string {
  if (!BASES.some((base) => base === name)) throw new Error(`there is no base "${name}"; there are ${BASES.join(' and ')}`)
  return readFileSync(new URL(`scenarios/${name}.yaml`, import.meta.url), 'utf8')
}

/** Lines with - go, lines with + come in where the last line found ends, or at the end if none was named; all others say where. */
function changed(base: string, change: string): string {
  const lines = base.split('\n').slice(0, -1)
  let at: number | null = null
  for (const line of change.split('\n').slice(0, -1)) {
    const [sign, rest] = [line[0], line.slice(1)]
    if (sign === '+') {
      lines.splice(at ?? lines.length, 0, rest)
      if (at !== null) at++
      continue
    }
    const found = lines.indexOf(rest, at ?? 0)
    if (found < 0) throw new Error(`the base has no line "${rest}" there`)
    if (sign === '-') lines.splice(found, 1)
    at = sign === '-' ? found : found + 1
  }
  return `${lines.join('\n')}\n`
}
