/**
 * The short phrase for a duration: `45 s`, `45 s ± 15 %`, `30..60 s`, `25..40..80 s`, `exponential 4 min`, `lognormal 4 min ± 66 %`.
 * `±` may be typed `+/-`; the spread is the standard deviation as a share of the mean (the cv of the time itself).
 */
import { nearest } from '@loopwright/line/check'
import { type Distribution, type DistributionKind, distributionKinds } from '@loopwright/stats'
import { percentText, toNumber } from './decimal.ts'
import * as say from '../problems/messages.ts'
import { clockTime, digitsOf, type Fault, failed, inBaseUnit, type Outcome, parseQuantity, type Scanned, scan } from './quantity.ts'

/** Kinds that have a phrase, with an example of it, and how a distribution is written so. */
const FORMS: { readonly [K in DistributionKind]?: readonly [example: string, of: (d: Extract<Distribution, { kind: K }>) => string] } = {
  constant: ['45 s', (d) => `${d.value} s`],
  lognormal: ['lognormal 4 min ± 66 %', (d) => `${d.mean} s ± ${percentText(d.cv)}`],
  gamma: ['gamma 4 min ± 66 %', (d) => `gamma ${d.mean} s ± ${percentText(d.cv)}`],
  exponential: ['exponential 4 min', (d) => `exponential ${d.mean} s`],
  uniform: ['30..60 s', (d) => `${d.min}..${d.max} s`],
  triangular: ['25..40..80 s', (d) => `${d.min}..${d.mode}..${d.max} s`],
  pert: ['pert 25..40..80 s', (d) => `pert ${d.min}..${d.mode}..${d.max} s`],
}

const WORDS: readonly string[] = Object.keys(FORMS)

const exampleOf = (kind: string): string => FORMS[kind as DistributionKind]![0]

/** The kind is known, and has no phrase. */
const hasMapOnly = (word: string): boolean => !WORDS.includes(word) && distributionKinds().some(({ kind }) => kind === word)

/**
 * The phrase of a distribution in seconds; null: only the full form says it.
 *
 * @example phraseOf({ kind: 'uniform', min: 30, max: 60 }) // => '30..60 s'
 */
export function phraseOf(d: Distribution): string | null {
  const form = FORMS[d.kind]
  return form === undefined ? null : form[1](d as never)
}

/**
 * @param text  the phrase; blanks at its ends are ignored
 * @returns     a distribution in seconds, or what is wrong with its column
 * @example parsePhrase('45 s ± 15 %').value // => { kind: 'lognormal', mean: 45, cv: 0.15 }
 */
export function parsePhrase(text: string): Outcome<Distribution> {
  const phrase = text.trimEnd()
  const clock = clockTime(phrase)
  if (clock !== null) return clock
  const word = /^\s*([A-Za-z]+)(?:\s+|$)/.exec(phrase)
  if (word === null) return body(phrase, 0, null)
  const kind = word[1]!
  const start = word[0].indexOf(kind)
  if (kind === 'normal') return normal(phrase, start, word[0].length)
  if (!WORDS.includes(kind)) {
    const near = nearest(kind, WORDS)
    if (near === null && !hasMapOnly(kind)) return failed(say.badPhrase(phrase.trim()), start, phrase.length - start)
    return failed(say.phraseKind(kind, near, WORDS), start, kind.length)
  }
  if (word[0].length === phrase.length) return failed(say.badPhrase(phrase), start, kind.length)
  return body(phrase, word[0].length, kind)
}

function body(phrase: string, from: number, kind: string | null): Outcome<Distribution> {
  const values: Scanned[] = []
  let at = from
  for (;;) {
    const scanned = scan(phrase, at)
    if (scanned === null) return failed(say.badPhrase(phrase.trim()), Math.min(at, Math.max(0, phrase.length - 1)), phrase.length - at)
    values.push(scanned)
    const dots = /\s*\.\.\s*/y
    dots.lastIndex = scanned.end
    const next = dots.exec(phrase)
    at = scanned.end + (next === null ? 0 : next[0].length)
    if (next === null) break
  }
  const spread = /\s*(±|\+\/-|\+-)\s*/y
  spread.lastIndex = at
  const sign = spread.exec(phrase)
  if (values.length === 1)
    return sign === null ? single(phrase, values[0]!, at, kind) : spreadOf(phrase, values[0]!, at + sign[0].length, kind)
  if (sign !== null) return failed(say.leftover(phrase.slice(at).trim()), at, phrase.length - at)
  return rangeOf(phrase, values, at, kind)
}

function single(phrase: string, scanned: Scanned, end: number, kind: string | null): Outcome<Distribution> {
  if (kind === 'lognormal' || kind === 'gamma') return failed(say.spreadMissing(kind), 0, phrase.length)
  if (kind !== null && kind !== 'constant' && kind !== 'exponential')
    return failed(say.rangeParts(kind, exampleOf(kind)), scanned.start, phrase.length - scanned.start)
  if (end < phrase.length) {
    const whole = kind === null ? parseQuantity(phrase, 'duration') : null
    if (whole?.fault) return whole
    return failed(say.leftover(phrase.slice(end).trim()), end, phrase.length - end)
  }
  const outcome = inBaseUnit(scanned, phrase, 'duration')
  if (outcome.fault !== null) return outcome
  if (kind !== 'exponential') return { value: { kind: 'constant', value: outcome.value }, fault: null }
  if (outcome.value === 0) return failed(say.zero(phrase.slice(scanned.start)), scanned.start, scanned.end - scanned.start)
  return { value: { kind: 'exponential', mean: outcome.value }, fault: null }
}

function spreadOf(phrase: string, mean: Scanned, from: number, kind: string | null): Outcome<Distribution> {
  if (kind !== null && kind !== 'lognormal' && kind !== 'gamma') return failed(say.spreadTooMuch(kind), mean.end, phrase.length - mean.end)
  const outcome = inBaseUnit(mean, phrase, 'duration')
  if (outcome.fault !== null) return outcome
  const cv = scan(phrase, from)
  if (cv === null) return failed(say.spreadNotPercent(phrase.slice(from), '15 %'), from, phrase.length - from)
  const digits = digitsOf(cv, phrase)
  if (digits.fault !== null) return digits
  if (cv.unit !== '%')
    return failed(say.spreadNotPercent(phrase.slice(from, cv.end), rightSpread(phrase, cv, outcome.value)), cv.start, cv.end - cv.start)
  if (cv.end < phrase.length) return failed(say.leftover(phrase.slice(cv.end).trim()), cv.end, phrase.length - cv.end)
  const share = toNumber(digits.value, 1n, 100n)
  const span = [cv.start, cv.end - cv.start] as const
  if (share < 0) return failed(say.negative(phrase.slice(cv.start)), ...span)
  if (!Number.isFinite(share) || share > 1000) return failed(say.beyondReach(phrase.slice(cv.start), '100000 %'), ...span)
  if (outcome.value === 0) return failed(say.zero(phrase.slice(mean.start, mean.end)), mean.start, mean.end - mean.start)
  if (share === 0) return { value: { kind: 'constant', value: outcome.value }, fault: null }
  return { value: { kind: kind === 'gamma' ? 'gamma' : 'lognormal', mean: outcome.value, cv: share }, fault: null }
}

/** `45 s ± 9 s` was probably meant as a standard deviation: say it as a share of the mean. */
function rightSpread(phrase: string, cv: Scanned, mean: number): string {
  const sd = inBaseUnit(cv, phrase, 'duration')
  if (sd.fault !== null || mean === 0) return cv.unit === '' ? `${cv.number} %` : '15 %'
  return `${Number(((100 * sd.value) / mean).toPrecision(4))} %`
}

function rangeOf(phrase: string, values: readonly Scanned[], end: number, kind: string | null): Outcome<Distribution> {
  const allowed =
    kind === null
      ? values.length === 2 || values.length === 3
      : kind === 'uniform'
        ? values.length === 2
        : (kind === 'triangular' || kind === 'pert') && values.length === 3
  const start = values[0]!.start
  if (!allowed) return failed(say.rangeParts(kind ?? 'a range', exampleOf(kind ?? 'triangular')), start, end - start)
  if (end < phrase.length) return failed(say.leftover(phrase.slice(end).trim()), end, phrase.length - end)
  const unit = values.at(-1)!.unit
  const outcomes = values.map((scanned) => inBaseUnit(scanned, phrase, 'duration', unit))
  const faults = outcomes.filter((outcome) => outcome.fault !== null)
  // the last value lends its unit to the others: a fault there is the one to tell
  if (faults.length > 0) return { value: null, fault: (outcomes.at(-1)!.fault ?? faults[0]!.fault)! }
  const numbers = outcomes.map((outcome) => outcome.value!)
  const [min = 0, mode = 0, max = 0] = numbers
  if (values.length === 2) {
    if (!(min < mode)) return failed(say.wrongOrder('the first value of a range must be below the second'), start, end - start)
    return { value: { kind: 'uniform', min, max: mode }, fault: null }
  }
  if (!(min <= mode && mode <= max && min < max))
    return failed(say.wrongOrder('the three values must rise: least, most frequent, greatest'), start, end - start)
  return { value: { kind: kind === 'pert' ? 'pert' : 'triangular', min, mode, max }, fault: null }
}

/** A plain normal is refused; the proposal is the lognormal of the same mean and spread. */
function normal(phrase: string, start: number, from: number): { value: null; fault: Fault } {
  const rest = phrase.slice(from)
  const parts = /^(.*?)\s*(?:±|\+\/-|\+-)\s*(.*)$/.exec(rest)
  const mean = parts === null ? null : parseQuantity(parts[1]!, 'duration')
  const sd = parts === null ? null : parseQuantity(parts[2]!, 'duration')
  let right = '"lognormal 45 s ± 15 %"'
  if (parts !== null && /%\s*$/.test(parts[2]!)) right = `"lognormal ${rest}"`
  else if (parts !== null && mean?.value && sd !== null && sd.value !== null)
    right = `"lognormal ${parts[1]} ± ${Number(((100 * sd.value) / mean.value).toPrecision(4))} %"`
  return failed(say.plainNormal(right), start, phrase.length - start)
}
