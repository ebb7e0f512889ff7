/** What kind of refusal it is; the sentence is in `message`. */
export type StatisticsErrorCode =
  | 'E_DOMAIN'
  | 'E_NOT_SETTLED'
  | 'E_SEED'
  | 'E_STREAM_NAME'
  | 'E_DISTRIBUTION'
  | 'E_TOO_FEW'
  | 'E_NOT_A_NUMBER'
  | 'E_UNEQUAL_LENGTH'
  | 'E_NO_SPREAD'
  | 'E_TOO_LARGE'
  | 'E_PRECISION'
  | 'E_PAIRING'
  | 'E_WARMUP'
  | 'E_FIT'
  | 'E_BALANCE'

/** A refusal: one sentence that names the quantity, the value met and the remedy. Nothing in this package returns NaN or an infinity instead. */
export class StatisticsError extends Error {
  override readonly name = 'StatisticsError'
  readonly code: StatisticsErrorCode

  constructor(code: StatisticsErrorCode, message: string) {
    super(message)
    this.code = code
  }
}
