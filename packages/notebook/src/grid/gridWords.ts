/** What a grid says, in sentences: the plan first, then which setting makes most, what each factor does, and whether they depend on each other. */
import { interactionWords, levelWords, settingWords, unitsText } from '@loopwright/charts'
import { capital, differenceDecimals, formatNumber, formatShare, percent, roundedParts, type RoundedParts } from '@loopwright/charts/table'
import { chanceVerdict, PLAN_SHARE } from '@loopwright/stats'
import type { GridPoint, GridResult } from '@loopwright/study/compare'
import { differenceFigure, differenceWords, levelWords as confidenceWords, pairingSentence } from '../compare/compareWords.ts'
import type { AnswerFigure } from '../cells/cell.ts'
import { figureOf } from '../sweep/answerFigures.ts'
import type { Period } from '../sweep/period.ts'
import { intervalsCaution } from '../words/intervalWords.ts'
import { FEW, planText } from '../words/planWords.ts'

const unitsParts = (point: GridPoint): RoundedParts =>
  point.mean === null ? { value: unitsText(point), half: null } : roundedParts(point.mean.mean, point.mean.halfWidth)

/** more settings are told by their number */
const NAMED_MAX = 4
/** settings of the other factors for each of which the fewest carriers are told */
const FEWEST_MAX = 6
const CARRIERS = 'carriers'

/** The answer: at least one sentence. */
export function gridSentences(result: GridResult, words: Period): string[] {
  if (result.effects === null) return [`No answer yet: a grid needs at least 2 simulated ${words.many} of every setting.`]
  return [
    ...planSentences(result, words),
    ...bestSentences(result, words),
    ...effectSentences(result, words),
    ...dependSentences(result, words),
  ]
}

/** The best setting, what it makes, how that stands to the base, and how many settings meet the plan. */
export function gridFigures(result: GridResult, { each, many }: Period): AnswerFigure[] {
  const { points, factors, best, effects, outside } = result
  if (effects === null || best === null) return []
  const point = points[best]!
  const planned = points.filter(({ meetsPlan }) => meetsPlan !== null)
  const met = planned.filter(({ meetsPlan, gridlocks }) => meetsPlan!.share >= PLAN_SHARE && gridlocks === 0)
  return [
    { label: 'Most units with', value: settingWords(factors, point.levels), sure: '' },
    figureOf(`Units ${each}`, unitsParts(point), 'on average'),
    ...(point.toBase === null
      ? []
      : [
          differenceFigure(
            outside === null ? `Against ${baseName(result)}` : 'Against the line as it stands',
            point.toBase,
            `units ${each}`,
          ),
        ]),
    ...(planned.length === 0
      ? []
      : [
          {
            label: 'Settings that meet the plan',
            value: formatNumber(met.length, 0),
            sure: `of ${planned.length}, in nine of ten ${many} simulated`,
          },
        ]),
  ]
}

/** How sure: the sample, and what more replications would narrow. */
export function gridSure(result: GridResult, { many }: Period): string[] {
  const { points, effects, level } = result
  if (effects === null) return []
  const n = effects.n
  if (isCalm(result)) return [`Each setting makes the same in all ${n} ${many} simulated: chance does not reach these numbers.`]
  const share = formatShare(level)
  const few = intervalsCaution(
    n,
    points.flatMap(({ mean }) => mean ?? []),
    many,
  )
  return [
    `Each of ${points.length} settings was simulated for the same ${n} ${many}: the same products, task times and stops. The differences from ${baseName(result)} hold together in ${share} of such studies, the effects of the factors likewise; each chance of the plan holds by itself. More simulated ${many} narrow all of them, not how much single ${many} differ.${few}`,
    ...pairingSentence(
      points.flatMap(({ toBase }) => toBase ?? []),
      { many },
      'intervals of the differences',
    ),
  ]
}

/** Every number is the same in every replication. */
const isCalm = ({ points }: Pick<GridResult, 'points'>): boolean => points.every(({ mean }) => mean?.halfWidth === 0)

/** "the line as it stands", or "with 6 carriers". */
function baseWords({ base, factors, points }: Pick<GridResult, 'base' | 'factors' | 'points'>): string {
  return base === null ? 'by the line as it stands' : withSetting(settingWords(factors, points[base]!.levels))
}

/** "with 6 carriers and drive.speed 12 m/min" */
const withSetting = (setting: string): string => `with ${setting.replace(' with ', ' and ')}`

/** The same as a name: "the line as it stands", "6 carriers". */
const baseName = ({ base, factors, points }: Pick<GridResult, 'base' | 'factors' | 'points'>): string =>
  base === null ? 'the line as it stands' : settingWords(factors, points[base]!.levels)

/** Which settings meet the plan in nine of ten, or which comes nearest. */
function planSentences(result: GridResult, { many }: Period): string[] {
  const { points, effects } = result
  const planned = [...points.keys()].filter((index) => points[index]!.meetsPlan !== null)
  if (planned.length === 0) return []
  const plans = new Set(planned.map((index) => points[index]!.plan))
  const plan = plans.size === 1 ? `The plan of ${planText([...plans][0]!)}` : 'The plan'
  const chance = (index: number) => points[index]!.meetsPlan!
  const met = planned.filter((index) => chance(index).share >= PLAN_SHARE && points[index]!.gridlocks === 0)
  const n = effects!.n
  if (isCalm(result)) {
    return [
      met.length === 0
        ? `${plan} is met by no setting. ${nearest(result, planned, many)}`
        : `${plan} is met by ${metWords(result, met, planned)}.`,
    ]
  }
  if (met.length === 0) {
    const still = planned.filter((index) => chance(index).successes > 0)
    if (still.length > 0 && still.every((index) => points[index]!.gridlocks > 0))
      return [`${plan} is met by no setting that keeps moving: each that met it stood still for good in some ${many} (gridlock).`]
    const nowhere = planned.every((index) => chance(index).successes === 0)
    return [
      `${plan} is met by no setting in ${nowhere ? `any of the ${n} ${many} simulated` : `nine of ten ${many}`}. ${nearest(result, planned, many)}`,
    ]
  }
  const shown = met.filter((index) => chanceVerdict(chance(index).successes, chance(index).n).verdict === 'met').length
  const sure =
    n < FEW
      ? ` ${n} ${many} are too few to promise it.`
      : shown === met.length
        ? ''
        : shown === 0
          ? ` Whether the chance is nine of ten is not settled for any of them: more simulated ${many} decide.`
          : ` For ${shown} of them the whole interval of the chance is nine of ten or more.`
  const fewest = met.length > NAMED_MAX ? fewestCarriers(result, met) : null
  return [
    `${plan} is met in at least nine of ten of the ${many} simulated by ${metWords(result, met, planned)}.${fewest === null ? '' : ` ${fewest}`}${sure}`,
  ]
}

/** "2 of 21 settings: …; …", "all 6 settings" */
function metWords(result: GridResult, met: readonly number[], planned: readonly number[]): string {
  if (met.length === planned.length) return met.length === 2 ? 'both settings' : `all ${met.length} settings`
  const named = met.length > NAMED_MAX ? '' : `: ${settingsWords(result, met)}`
  return `${met.length} of ${planned.length} settings${named}`
}

/** "Nearest comes 8 carriers, drive.speed 12 m/min: 8 of 40 shifts (20 %, 9 to 36)." */
function nearest({ points, factors }: GridResult, planned: readonly number[], many: string): string {
  const free = planned.filter((index) => points[index]!.gridlocks === 0)
  const among = free.length > 0 ? free : planned
  const better = (a: GridPoint, b: GridPoint): boolean =>
    a.meetsPlan!.successes !== b.meetsPlan!.successes ? a.meetsPlan!.successes > b.meetsPlan!.successes : a.mean!.mean > b.mean!.mean
  const point = points[among.reduce((best, index) => (better(points[index]!, points[best]!) ? index : best))]!
  const { successes, n, low, high } = point.meetsPlan!
  const chance =
    successes === 0
      ? `${unitsText(point)} units on average`
      : `it is met in ${successes === n ? 'all' : `${successes} of`} ${n} ${many} (${formatShare(successes / n)}, ${percent(low)} to ${percent(high)})`
  return `Nearest comes ${settingWords(factors, point.levels)}: ${chance}.`
}

/** Settings by name, or how many. */
function settingsWords({ points, factors }: GridResult, indices: readonly number[]): string {
  if (indices.length > NAMED_MAX) return `${indices.length} of ${points.length} settings`
  return indices.map((index) => settingWords(factors, points[index]!.levels)).join('; ')
}

/** "The fewest carriers for it: 9 with drive.speed 10 m/min, 7 with drive.speed 15 m/min." null: nothing to choose. */
function fewestCarriers({ points, factors }: GridResult, among: readonly number[]): string | null {
  const at = factors.findIndex(({ name }) => name === CARRIERS)
  if (at < 0) return null
  const others = [...factors.keys()].filter((factor) => factor !== at)
  const least = new Map<string, GridPoint>()
  for (const index of among) {
    const point = points[index]!
    const key = others.map((factor) => point.levels[factor]).join()
    const known = least.get(key)
    if (known === undefined || point.carriers < known.carriers) least.set(key, point)
  }
  if (others.length === 0) return `The fewest carriers for it: ${[...least.values()][0]!.carriers}.`
  const combinations = others.reduce((product, factor) => product * factors[factor]!.levels.length, 1)
  if (combinations > FEWEST_MAX) {
    const fewest = [...least.values()].reduce((best, point) => (point.carriers < best.carriers ? point : best))
    return `The fewest carriers for it: ${settingWords(factors, fewest.levels)}.`
  }
  const where = [...least.values()].map(
    (point) => `${point.carriers} with ${others.map((factor) => levelWords(factors[factor]!, point.levels[factor]!)).join(', ')}`,
  )
  return `The fewest carriers for it: ${where.join('; ')}.`
}

function bestSentences(result: GridResult, { each, one }: Period): string[] {
  const { points, factors, best, maybeBest, nearBest } = result
  if (best === null) return [`Every setting stood still in some ${one} (gridlock): none is the best.`]
  const point = points[best]!
  const calm = isCalm(result)
  const same = points.flatMap(({ units }, index) =>
    index !== best && units.every((made, world) => made === point.units[world]) ? [index] : [],
  )
  const rivals = maybeBest.filter((index) => index !== best && !same.includes(index))
  const equal = same.length === 0 ? '' : `, and ${calm ? '' : 'exactly '}as much by ${settingsWords(result, same)}`
  const open =
    rivals.length === 0
      ? ''
      : rivals.length === 1
        ? `; ${settingsWords(result, rivals)} cannot be told from it`
        : `; ${rivals.length} others cannot be told from it`
  const tied = `${equal}${open}`
  const most = `Most is made by ${settingWords(factors, point.levels)}: ${unitsText(point)} units ${each}${calm ? '' : ' on average'}${tied}.`
  const near = nearBest.filter((index) => index !== best && !same.includes(index))
  const fewest = near.length < 2 ? null : fewestCarriers(result, nearBest)
  const enough =
    near.length === 0
      ? []
      : [
          `${near.length === 1 ? capital(withSetting(settingsWords(result, near))) : `With each of ${near.length} other settings`} at most 1 % less is made${calm ? '' : ', shown with 95 % confidence'}: other reasons may decide.${fewest === null ? '' : ` ${fewest}`}`,
        ]
  const toBase =
    point.toBase === null || (point.toBase.status === 'identical in every replication' && result.base !== null)
      ? []
      : [againstBase(point.toBase, baseWords(result), each)]
  return [most, ...toBase, ...enough]
}

function againstBase(difference: NonNullable<GridPoint['toBase']>, base: string, each: string): string {
  const { mean, status, level } = difference
  const { size, low, high } = differenceWords(difference)
  switch (status) {
    case 'identical in every replication':
      return `That is exactly as much as ${base}.`
    case 'always differs by the same':
      return `That is always ${size} ${mean > 0 ? 'more' : 'fewer'} than ${base}.`
    case 'difference shown':
      return `That is ${size} ${mean > 0 ? 'more' : 'fewer'} ${each} than ${base} (${confidenceWords(level)}: ${low} to ${high}).`
    case 'no difference shown':
      return `No difference is shown from what is made ${base} (${confidenceWords(level)}: ${low} to ${high} units ${each}).`
  }
}

/** What each factor does, the strongest first. */
function effectSentences({ effects, factors }: GridResult, { each }: Period): string[] {
  const known = effects!.main.filter(({ span }) => span !== null).sort((a, b) => b.span!.mean - a.span!.mean)
  return known.map(({ factor, least, most, span }) => {
    const own = factors[factor]!
    const name = factorName(own)
    const others = factors.filter((each) => each !== own).map(factorName)
    const averaged = others.length === 0 ? '' : `, averaged over ${others.length === 1 ? others[0] : 'the other factors'}`
    const { mean, halfWidth, low, high, status, level } = span!
    const decimals = differenceDecimals(mean, halfWidth)
    const text = (value: number): string => formatNumber(value, decimals)
    if (status === 'identical in every replication') return `${capital(name)} changes nothing.`
    if (status === 'no difference shown')
      return `No effect of ${name} is shown: at most ${text(Math.max(Math.abs(low), Math.abs(high)))} units ${each}${averaged}.`
    const limits = halfWidth > 0 ? ` (${confidenceWords(level)}: ${text(low)} to ${text(high)})` : ''
    return `With ${levelWords(own, most)} the line makes ${text(mean)} ${text(mean) === '1' ? 'unit' : 'units'} ${each} more than with ${own.levels[least]}${limits}${averaged}.`
  })
}

/** What a factor is called within a sentence. */
export const factorName = ({ name }: GridResult['factors'][number]): string => (name === CARRIERS ? 'the number of carriers' : name)

/** Two factors at a time, the strongest dependence first. */
function dependSentences(result: GridResult, { one }: Period): string[] {
  const ranked = [...result.effects!.interactions].sort((a, b) => Math.abs(b.difference.mean) - Math.abs(a.difference.mean))
  return ranked.slice(0, NAMED_MAX).flatMap(({ first, second }) => interactionWords(result, first, second, one) ?? [])
}
