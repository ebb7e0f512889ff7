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
