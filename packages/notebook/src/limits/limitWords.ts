/** What limits a line, in sentences and a table, before anything runs. */
import {
  capital,
  formatDuration,
  formatNumber,
  formatSeconds,
  formatShare,
  type Table,
  tableOf,
  timeScale,
  wordColumn,
} from '@loopwright/charts/table'
import { listWords } from '@loopwright/line'
import { type Limit, lineLimits } from '@loopwright/line/bounds'
import { type Scenario, titleOf } from '@loopwright/scenario'
import { eventWords, type LimitWarning, limitWarnings } from '@loopwright/study/change'
import { type Period, period } from '../sweep/period.ts'
import { planText } from '../words/planWords.ts'
import { titledLine } from '../words/titledLine.ts'

export interface LimitsTold {
  /** the slowest first, what it means for the plan, and what comes next */
  readonly sentences: readonly string[]
  /** kind of the slowest; null: nothing is known to limit the line */
  readonly constraint: Limit['kind'] | null
  /** null likewise */
  readonly table: Table | null
  /** the plan above a limit, which the sentences say too; stops longer than the time between them */
  readonly warnings: readonly { readonly code: LimitWarning['code']; readonly text: string }[]
}

/** All that is said of the limits of a scenario. */
export function limitsTold(scenario: Scenario, known?: readonly Limit[]): LimitsTold {
  const words = period(scenario)
  const titled = titledLine(scenario)
  const limits = known ?? lineLimits(titled)
  return {
    sentences: limitSentences(limits, words),
    constraint: limits[0]?.kind ?? null,
    table: limits.length === 0 ? null : limitTable(limits, words),
    warnings: limitWarnings(titled, words.plan, limits).map((warning) => ({
      code: warning.code,
      text: limitWarningSentence(warning, words, (name) => titleOf(scenario, 'stop', name)),
    })),
  }
}

/** "Ann can serve at most 216 units a shift (125 s of work for each); the plan of 330 cannot be met on average. Waiting for each other comes on top." */
export function limitSentences(limits: readonly Limit[], words: Period): string[] {
  const [first] = limits
  if (first === undefined) return ['No limit of the line is known: no product is ever taken off, or it has too many ways to look at.']
  const plan = planWords(first, words.plan)
  const why = first.atMost ? [] : [`That is an estimate: ${[...first.reasons].join(', ') || 'mean times alone'}.`]
  const next = nearest(limits)
    .slice(1, 3)
    .map((limit) => `${limit.kind === 'operator' ? operatorName(limit) : limit.name} (${limitCount(limit)})`)
  return [
    `${limitSentence(first, words)}${plan === null ? '' : `; ${plan}`}. Waiting for each other comes on top.`,
    ...why,
    ...(next.length === 0 ? [] : [`Next ${next.length === 1 ? 'comes' : 'come'} ${next.join(' and ')}.`]),
  ]
}

/** One limit, without a full stop: "S4 Cover can do about 332 units a shift (81.4 s each: 70 s of work, 11.4 s of moves in and out)" */
export function limitSentence(limit: Limit, { each }: Pick<Period, 'each'>): string {
  const { subject, does } = limitParts(limit, each)
  return `${subject} ${does}`
}

/** The same behind the limit's name: "Ann, who can serve at most 216 units a shift (125 s of work for each)"; "arrivals. Products arrive for …" */
export function limitClause(limit: Limit, { each }: Pick<Period, 'each'>): string {
  const { subject, does } = limitParts(limit, each)
  switch (limit.kind) {
    case 'arrivals':
    case 'space':
      return `${limitName(limit)}. ${subject} ${does}`
    case 'operator':
      return `${limitName(limit)}, who ${does}`
    default:
      return `${limitName(limit)}, which ${does}`
  }
}

/** Who does it, and what. */
function limitParts(limit: Limit, each: string): { readonly subject: string; readonly does: string } {
  const { kind, name, secondsPerUnit, parts } = limit
  const units = `${limitCount(limit)} units ${each}`
  switch (kind) {
    case 'station':
      return limit.stations.length > 1
        ? { subject: name, does: `together can do ${units}` }
        : { subject: name, does: `can do ${units} (${formatSeconds(secondsPerUnit)} each: ${partWords(limit)})` }
    case 'operator': {
      const own = limit.operators.length > 1 ? 'together can serve' : 'can serve'
      const extra = parts.stoppedSeconds > 0 ? ', stops included' : ''
      return {
        subject: capital(operatorName(limit)),
        does: `${own} ${units} (${formatSeconds(secondsPerUnit)} of ${operatorWords(limit)} for each${extra})`,
      }
    }
    case 'arrivals':
      return {
        subject: 'Products',
        does: `arrive for ${units} (one every ${formatSeconds(secondsPerUnit)}${isPlainRate(limit) ? '' : ' that is taken off good'})`,
      }
    case 'list':
      return { subject: 'The list of products', does: `is enough for ${units}` }
    case 'receiver':
      return { subject: `The ${name}`, does: `takes ${units} (one every ${formatSeconds(secondsPerUnit)})` }
    case 'repair crew':
      return { subject: capital(name), does: `can keep up with ${units} (${formatSeconds(parts.stoppedSeconds)} of repairs for each)` }
    case 'carriers':
      return { subject: name, does: `can carry ${units} (${formatSeconds(secondsPerUnit)} for each round)` }
    case 'space':
      return { subject: `The free zones between ${name.replace(/^room for /, '')}`, does: `let through ${units}` }
  }
}

/** Within a sentence: "Ann", "operator second", "the list of products". */
export function limitName(named: { readonly kind: string; readonly name: string }): string {
  if (named.kind === 'operator') return operatorName(named)
  return ['list', 'receiver', 'space'].includes(named.kind) ? `the ${named.name}` : named.name
}

/** "Ann"; a name that begins small is told as one: "operator second" */
const operatorName = ({ name }: { readonly name: string }): string => (/^\p{Ll}/u.test(name) ? `operator ${name}` : name)

/** "at most 216", "about 332" */
export function limitCount({ unitsPerWindow, atMost }: Limit): string {
  return atMost ? `at most ${formatNumber(Math.floor(unitsPerWindow + 1e-6), 0)}` : `about ${formatNumber(unitsPerWindow, 0)}`
}

function planWords(limit: Limit, plan: number | null): string | null {
  if (plan === null) return null
  const wanted = planText(plan)
  if (limit.atMostPerWindow !== null && plan > limit.atMostPerWindow) return `the plan of ${wanted} cannot be met on average`
  if (plan > limit.unitsPerWindow) return `the plan of ${wanted} is not to be expected`
  return `the plan of ${wanted} takes ${formatShare(plan / limit.unitsPerWindow)} of it`
}

/** "work and walking" */
function operatorWords({ parts: { releaseSeconds, walkingSeconds, handlingSeconds } }: Limit): string {
  const all = [
    'work',
    ...(releaseSeconds > 0 ? ['release'] : []),
    ...(handlingSeconds > 0 ? ['pushing and pulling'] : []),
    ...(walkingSeconds > 0 ? ['walking'] : []),
  ]
  return listWords(all)
}

function partWords({ parts, secondsPerUnit }: Limit): string {
  const { workSeconds, releaseSeconds, exchangeSeconds, stoppedSeconds } = parts
  const part = (value: number, word: string): string[] =>
    value > 0.005 * Math.min(10, secondsPerUnit) ? [`${formatSeconds(value, secondsPerUnit)} ${word}`] : []
  return [
    ...part(workSeconds, 'of work'),
    ...part(releaseSeconds, 'until it is let go'),
    ...part(exchangeSeconds, 'of moves in and out'),
    ...part(stoppedSeconds, 'of stops'),
  ].join(', ')
}

/** Nothing that arrives is taken off rejected. */
const isPlainRate = ({ secondsPerUnit }: Limit): boolean => Math.abs(secondsPerUnit - Math.round(secondsPerUnit * 10) / 10) < 1e-6

/** limits so many times as far away as the first tell nothing */
const FAR = 5
const nearest = (limits: readonly Limit[]): Limit[] =>
  limits.filter(({ unitsPerWindow }) => unitsPerWindow <= FAR * (limits[0]?.unitsPerWindow ?? 0))

/** The slowest first and marked; those that are far away are left out. */
function limitTable(limits: readonly Limit[], { one, line }: Pick<Period, 'one' | 'line'>): Table {
  const rows = nearest(limits)
  const scale = timeScale(
    rows.map(({ secondsPerUnit }) => secondsPerUnit),
    limits.length > 0 && limits[0]!.secondsPerUnit < 10 ? 2 : 1,
  )
  return tableOf<Limit>({
    caption: `What limits the ${line}, the slowest first`,
    columns: [
      {
        head: 'Limit',
        align: 'left',
        text: ({ name }) => name,
        data: [
          ['limit', 'what limits', ({ name }) => name],
          ['kind', 'of what kind it is', ({ kind }) => kind],
        ],
      },
      {
        head: `${scale.name}\nper unit`,
        text: ({ secondsPerUnit }) => scale.text(secondsPerUnit),
        data: [['unit_s', 'seconds for each unit', ({ secondsPerUnit }) => secondsPerUnit]],
      },
      {
        head: `Units per\n${one}`,
        bar: ({ unitsPerWindow }) => unitsPerWindow,
        text: ({ unitsPerWindow, atMost }) => formatNumber(atMost ? Math.floor(unitsPerWindow + 1e-6) : unitsPerWindow, 0),
        data: [['units', `units per ${one}`, ({ unitsPerWindow }) => unitsPerWindow]],
      },
      {
        head: 'This is',
        align: 'left',
        text: ({ atMost }) => (atMost ? 'at most' : 'estimate'),
        data: [['at_most', 'no more can be made; else an estimate', ({ atMost }) => atMost]],
      },
      {
        ...wordColumn<Limit>('An estimate because of', 'reasons', 'why it is an estimate', ({ reasons }) => reasons.join(', ')),
        pageOnly: true,
      },
    ],
    rows,
    marked: (_, index) => index === 0,
    note: 'Each by itself, from mean times; waiting for each other comes on top. At most: in the long run no line of this kind makes more.',
  })
}

/** A warning as a sentence. */
function limitWarningSentence(warning: LimitWarning, words: Period, title: (stop: string) => string = (name) => name): string {
  if (warning.code === 'plan above a limit') {
    const { limit, plan } = warning
    return `${limitSentence(limit, words)}; ${planWords(limit, plan)!}.`
  }
  if (warning.code === 'many events')
    return `One run of the line has about ${eventWords(warning.events)}: are the shortest times of stops and arrivals what was meant?`
  const { sources, clock, timeToFailureSeconds, repairSeconds, availabilityShare } = warning
  const stop = `The ${sources.length === 1 ? 'stop' : 'stops'} ${listWords(sources.map(title), 1)}`
  const verb = sources.length === 1 ? ['comes', 'lasts'] : ['come', 'last']
  return `${stop} ${verb[0]!} after ${formatDuration(timeToFailureSeconds)} ${clock === 'operating' ? 'of operation' : 'by the clock'} and ${verb[1]!} ${formatDuration(repairSeconds)}, longer than the time between: what it stops is up for ${formatShare(availabilityShare)} of the time. Are the two the right way round?`
}
