/** Columns of a terminal that does not say how wide it is, and of a file. */
export const TERMINAL_COLUMNS = 80

/** What a terminal can show. */
export interface TerminalOptions {
  /** weight and colour for the answer, the chosen row, warnings, gridlock, the plan met or missed; default false */
  readonly colour?: boolean
  /** that a line may take, > 0; default 80 */
  readonly columns?: number
  /** bars in tables that have room for them; default false */
  readonly bars?: boolean
}
