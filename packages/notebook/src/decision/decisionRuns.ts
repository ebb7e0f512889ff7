/** The alternatives of a decision file with their scenarios and simulated shifts: what every tale of a decision is made of. */
import { type Alternative, type Decision, overtimeMinutes, payback, type PaybackResult, type PricedLine } from '@loopwright/decide'
import { type Handlings, lineFigures, screen, type ScreeningResult } from '@loopwright/decide/screening'
import { lawOrNull, workingSeconds } from '@loopwright/line/bounds'
import type { Scenario } from '@loopwright/scenario'
import type { AlternativesResult } from '@loopwright/study/compare'
import { meanOf } from '@loopwright/stats'
import { mostWalked, needsWalks, personTitle, statesWalks, walkedBy } from './walked.ts'

/** A decision, its scenarios, and what was simulated of them. */
export interface DecisionRuns {
  readonly decision: Decision
  /** of the decision, as the reader would type it */
  readonly file: string
  /** in the order of the alternatives */
  readonly scenarios: readonly Scenario[]
  /** lines in the order of the alternatives */
  readonly result: AlternativesResult
}

/** The plan of today's line, units per shift. @throws RangeError  without one, or where the scenario judges something else than one shift */
function planOf({ decision, scenarios }: Pick<DecisionRuns, 'decision' | 'scenarios'>): number {
  const { plan, calendar, name } = scenarios[decision.today]!
  if (calendar?.shifts !== 1) throw new RangeError(`money is reckoned by shifts: "${name}" needs a calendar that judges one shift`)
  if (plan === null) throw new RangeError(`overtime is what a plan takes: "${name}" needs a plan, such as "plan: 320 per shift"`)
  return plan.unitsPerWindow
}

/**
 * What money is reckoned with is there: asked before anything runs.
 *
 * @returns  the plan, units per shift
 * @throws RangeError  without money, plan or shifts: what is missing is named
 * @example needsMoney(runs) // => 320
 */
export function needsMoney(of: Pick<DecisionRuns, 'decision' | 'scenarios' | 'file'>): number {
  if (of.decision.money === null)
    throw new RangeError(`there is no money in ${of.file}: write wage, crew, days, years and interest under "money:"`)
  return planOf(of)
}

/**
 * Payback of the alternatives of a decision against today.
 *
 * @throws RangeError  without money, plan or shifts: what is missing is named
 * @example paybackOf(runs).alternatives.map(({ name }) => name) // => ['powered rollers', 'zoned loop', 'guided vehicles']
 */
export function paybackOf(runs: DecisionRuns): PaybackResult {
  const { decision, result } = runs
  const plan = needsMoney(runs)
  const { today } = decision
  const money = decision.money!
  const lines = decision.alternatives.map((alternative, index) => priced(runs, alternative, index))
  const paidHours = money.paidHours ?? workingSeconds(runs.scenarios[today]!.line) / 3600
  return payback(
    lines[today]!,
    lines.filter((_, index) => index !== today),
    plan,
    { ...money, paidHours },
    { seed: result.comparison.seed },
  )
}

function priced({ decision, scenarios, result }: DecisionRuns, alternative: Alternative, index: number): PricedLine {
  const { name, investment, runningCost, salvage, crew } = alternative
  const { line } = scenarios[index]!
  return {
    name,
    units: result.comparison.lines[index]!.units,
    netSeconds: workingSeconds(line),
    exchangeSeconds: lawOrNull(line)?.exchangeSeconds ?? null,
    crew: crew ?? decision.money!.crew,
    investment,
    runningCost,
    salvage,
  }
}

/** What the people of a line do in a shift: of the one who does most. */
export interface Effort {
  /** pushes and pulls */
  readonly handlings: number
  readonly handlingSeconds: number
  /** metres, those of pushes, pulls and tasks too where their length is known; null: nothing is known of walking */
  readonly walkMetres: number | null
}

/** The most that one person pushes and pulls, and the most that one walks, in a shift of one alternative; null: its people were not watched. */
export function effortOf({ decision, scenarios, result }: DecisionRuns, index: number): Effort | null {
  const people = result.people[index]
  if (people === undefined) return null
  const most = people.handlings.reduce((best, one) => (one.count > best.count ? one : best), { operator: '', count: 0, seconds: 0 })
  const walked = walkedBy(scenarios[index]!.line, people, decision.alternatives[index]!, decision.screening?.walks ?? [])
  return { handlings: most.count, handlingSeconds: most.seconds, walkMetres: mostWalked(walked, people, decision.alternatives[index]!) }
}

/** Mean minutes of overtime a shift; null without a plan, or where nothing is made. */
export function overtimeOf(units: readonly number[], plan: number | null, { line }: Pick<Scenario, 'line'>): number | null {
  const minutes = plan === null ? null : overtimeMinutes(units, plan, workingSeconds(line))
  return minutes === null ? null : meanOf(minutes)
}

/**
 * Screening of each alternative, with its handlings from simulated shifts. Pushing is looked at where somebody pushes.
 *
 * @throws RangeError  where the file has no screening, or a way for a task that no alternative has
 * @example screeningsOf(runs)[0].name // => 'push line'
 */
export function screeningsOf(runs: DecisionRuns): readonly { readonly name: string; readonly result: ScreeningResult }[] {
  const { decision, scenarios, result } = runs
  const { screening } = decision
  if (screening === null)
    throw new RangeError(`there is no screening in ${runs.file}: write masses, heights, gaps and the like under "screening:"`)
  needsWalks(runs)
  return decision.alternatives.map(({ name }, index) => {
    const { line } = scenarios[index]!
    const { byHand, speed } = lineFigures(line)
    const driven = speed !== null
    const inputs = {
      ...screening,
      push: byHand ? screening.push : null,
      ...(driven ? {} : { rollers: null, drive: null, load: null, zone: null, volts: null }),
    }
    // of the person who does most: the others do the same, and less
    const most = (result.people[index]?.handlings ?? []).toSorted((one, other) => other.count - one.count)[0]
    const place = personTitle(line, most?.operator ?? '')
    const handlings: Handlings[] =
      most === undefined || most.count === 0
        ? []
        : [{ place: `${place}, where most are`, perShift: most.count, netSeconds: workingSeconds(line) }]
    const people = result.people[index]
    const walked =
      people === undefined || !statesWalks(decision) ? [] : walkedBy(line, people, decision.alternatives[index]!, screening.walks)
    return { name, result: screen(line, inputs, handlings, walked) }
  })
}
