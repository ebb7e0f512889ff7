/** What a decision file says, complete. */
import type { Doubted } from '../money/pricedLine.ts'
import type { ScreeningInputs } from '../screening/inputs.ts'

/** What a decision file says, complete. */
export interface Decision {
  /** heads the pages; null: each page has its own */
  readonly question: string | null
  /** path of the scenario that the alternatives are made of, from the folder of the decision file */
  readonly scenario: string
  /** such as "€" */
  readonly currency: string
  /** at least two */
  readonly alternatives: readonly Alternative[]
  /** index of the line as it is today */
  readonly today: number
  readonly money: MoneySection | null
  /** handlings come from the simulation */
  readonly screening: ScreeningInputs | null
  readonly criteria: CriteriaSection | null
  readonly acceptance: AcceptanceSection | null
  readonly promise: PromiseSection | null
}

/** A way to build the line. */
export interface Alternative {
  readonly name: string
  readonly source: AlternativeSource
  /** what the model takes for granted, in a sentence; null: nothing is said */
  readonly assumes: string | null
  /** persons on a shift; null: those of `money` */
  readonly crew: number | null
  readonly investment: Doubted
  /** money a year */
  readonly runningCost: Doubted
  /** got for it after the last year. */
  readonly salvage: number
  /** square metres; null: not known */
  readonly floor: number | null
  /** metres that a person walks for one push or pull; null: not known */
  readonly metresPerHandling: number | null
}

/** Where the line of an alternative is written. */
export type AlternativeSource =
  | { readonly kind: 'scenario' }
  /** a scenario file of its own, from the folder of the decision file */
  | { readonly kind: 'file'; readonly file: string }
  /** a named set of changed values in the scenario */
  | { readonly kind: 'variation'; readonly variation: string }
  /** the scenario with values changed by path */
  | { readonly kind: 'set'; readonly changes: Readonly<Record<string, string>> }

/** What an hour, a shift and a year cost. */
export interface MoneySection {
  readonly wage: Doubted
  readonly crew: number
  readonly overtimeFactor: number
  readonly daysPerYear: number
  readonly shiftsPerDay: number
  /** hours a person is paid for a shift; null: its net time */
  readonly paidHours: number | null
  readonly years: number
  /** share a year */
  readonly interest: number
  readonly hurdleMonths: number
  /** where the hurdle comes from, in words */
  readonly hurdleSource: string
  /** minutes a shift really worked today; null: not known */
  readonly overtimeWorked: number | null
}

/** Figures that the simulation and the file give a score. */
export const COMPUTED = ['output', 'overtime', 'handlings', 'floor', 'payback'] as const
/** One of COMPUTED: units per shift, minutes a shift, pushes of one person, square metres, months. */
export type ComputedFigure = (typeof COMPUTED)[number]

/** What is weighed. */
export interface CriteriaSection {
  readonly mustHaves: readonly {
    readonly name: string
    /** share of shifts in which the plan must be met; null: the team says who has it */
    readonly planMetIn: number | null
    /** by alternative; null: computed */
    readonly met: ReadonlyMap<string, boolean> | null
  }[]
  /** weights sum to 100 */
  readonly criteria: readonly CriterionSection[]
}

/** One criterion, with what scores 1 and what scores 5. */
export interface CriterionSection {
  readonly name: string
  readonly weight: number
  /** figure that gives the score; null: the team scores */
  readonly from: ComputedFigure | null
  readonly one: number | string
  readonly five: number | string
  /** by alternative, 1 … 5; null: computed */
  readonly scores: ReadonlyMap<string, number> | null
}

/** How the line will be accepted. */
export interface AcceptanceSection {
  /** index of the alternative */
  readonly of: number
  /** of one trial, breaks included */
  readonly seconds: number
  readonly lookSeconds: number
  /** of the trials that the band holds */
  readonly share: number
  /** the slower line’s tasks take so much longer, a share */
  readonly longer: number
  readonly falseAlarm: number
  readonly miss: number
  readonly trialsMost: number
}

/** A shift of the day that has its own hours, crew or plan. */
export interface ShiftSection {
  readonly name: string
  /** named set of changed values in the scenario of the alternative; null: none */
  readonly variation: string | null
  /** values changed by path, after the variation */
  readonly changes: Readonly<Record<string, string>>
  /** persons, 0: nobody; null: those of the alternative */
  readonly crew: number | null
  /** days a week on which it is worked */
  readonly daysPerWeek: number
}

/** What is promised, and for how long. */
export interface PromiseSection {
  /** index of the alternative */
  readonly of: number
  readonly daysPerWeek: number
  /** of shifts that differ, as many as there are */
  readonly shiftsPerDay: number
  /** shifts that differ, in the order of the day; null: all are like the one that the scenario judges */
  readonly shifts: readonly ShiftSection[] | null
  /** until when, or as long as what, in words */
  readonly until: string
  /** how people learn the line; null: no ramp-up is told */
  readonly learning: {
    readonly rate: number
    readonly incompressible: number
    readonly standardAfter: number
    readonly weeks: number
  } | null
}
