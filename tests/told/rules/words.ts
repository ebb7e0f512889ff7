/** Rules about words. */
import { isOpen, type ToldLine } from '../lines.ts'
import type { Judged } from '../rules.ts'
import { paragraphsOf, sentencesOf } from '../textParts.ts'

const COLUMNS = 80

export const columns = ({ text }: Judged): string[] =>
  text
    .split('\n')
    .filter((line) => [...line].length > COLUMNS)
    .map((line) => `${[...line].length} columns: ${line}`)

export const noProgramWords = ({ text }: Judged): string[] => found(text, /\bundefined\b|\bNaN\b|\bInfinity\b|\bnull\b|\[object/g)

/** The scenario's own words do not count, and it may say that the line is none, or that the law of loops tells nothing of it. */
export function openLineIsNoLoop(told: Judged): string[] {
  if (!isOpen(told.line)) return []
  return found(withoutOwnWords(told).replace(/\bno (single )?(closed )?loop\b|\blaw of (the|a) loop\b/gi, ''), /\bloops?\b/gi)
}

const VERDICT = /(?<![-\w])(safe|unsafe|safely|compliant|non-compliant|approved|certified|meets the standards?)(?![-\w])/gi

export const noVerdict = (told: Judged): string[] => found(withoutOwnWords(told), VERDICT)

const MANY =
  'units|paths|carriers|zones|stations|runs|shifts|windows|replications|operators|products|places|transfers|ways|corners|variations|lines|hours|minutes|times'

export const noOneOfMany = ({ text }: Judged): string[] =>
  found(text, new RegExp(`(?<![\\d.,±…−–-]|to |\\.\\. |± )\\b1 (more |fewer )?(${MANY})\\b`, 'g'))

/** "after 0 s", "the other 0 made", "at least 0.0 min": nothing is told as nothing. */
export const noZeroOfTime = ({ text }: Judged): string[] =>
  found(text.replace(/\s+/g, ' '), /\bafter 0 s\b|\bthe other 0\b|\btakes at least 0(\.0)? min\b/g)

/** "6 carriers makes", "1 found the queue full and were" */
export const numberOfVerb = ({ text }: Judged): string[] =>
  found(text.replace(/\s+/g, ' '), /\b([2-9]|\d{2,}) carriers (makes|is|was|has)\b|(?<![\d.,])1 found the queue full and were\b/g)

/** Heads of columns that were left out are told in a sentence, and are words there. */
export function headsAreWords({ text }: Judged): string[] {
  const left = /Left out here for want of room: ([^.]*)\./.exec(text.replace(/\s+/g, ' '))
  return (left?.[1] ?? '').split('; ').filter((head) => /^[a-z]{1,3}$/.test(head))
}

/** Above two hours seconds with decimals tell nothing: "39 810.1". */
export const noLongSeconds = ({ text }: Judged): string[] => found(text, /\b(7\u202f[2-9]\d\d|[89]\u202f\d{3}|\d{2,3}\u202f\d{3})\.\d\b/g)

/** Parts whose keys are no words for people. */
const TITLED = ['stops', 'variations', 'options', 'variants', 'tasks']

/** A key is looked for only where the file gives a title in its place. */
export function noIdentifier({ text, line }: Judged): string[] {
  return titledKeys(line.written).flatMap((key) => found(text, new RegExp(`(?<![\\w.])${key.replace(/[^\w ]/g, '.')}(?![\\w])`, 'g')))
}

function titledKeys(written: unknown, kind = ''): string[] {
  if (written === null || typeof written !== 'object') return []
  return Object.entries(written).flatMap(([key, value]) => {
    const title = (value as Record<string, unknown> | null)?.title
    return [...(TITLED.includes(kind) && typeof title === 'string' && title !== key ? [key] : []), ...titledKeys(value, key)]
  })
}

export function firstSentenceAnswersPlan({ text, line, command, code }: Judged): string[] {
  if (code !== 0 || !command.answersPlan || line.scenario.plan === null) return []
  const [answer] = paragraphsOf(text)
  const first = answer === undefined ? '' : sentencesOf(text)[0]!
  if (/^(GRIDLOCK|OUT OF PRODUCTS) /.test(first)) return /\bplan\b/.test(answer!) ? [] : [first]
  return /\bplan\b/.test(first) ? [] : [first]
}

function withoutOwnWords({ text, line }: { readonly text: string; readonly line: ToldLine }): string {
  const { name, question } = line.scenario
  const flat = text.replace(/\s+/g, ' ')
  const keys = Object.keys((line.written.variations as object | undefined) ?? {})
  return [question, name, line.file, line.name, ...keys].reduce((left, own) => left.replaceAll(own, ''), flat)
}

/** Where it stands, with what stands about it. */
function found(text: string, pattern: RegExp): string[] {
  return [...text.matchAll(pattern)].map((match) => {
    const from = Math.max(0, match.index - 30)
    return text.slice(from, match.index + match[0].length + 20).replace(/\s+/g, ' ')
  })
}
