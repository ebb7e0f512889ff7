/** Column means of the rows of one number of carriers, taken in the order of replications, whatever order they come in. */

export class RowTally {
  /** replications 0 … taken − 1 are in */
  taken = 0
  /** by column: rows with a number there, their mean, and the sum of squared deviations */
  readonly counts: Float64Array
  readonly means: Float64Array
  readonly squares: Float64Array
  readonly #waiting = new Map<number, Float64Array>()
  readonly #onRow: (row: Float64Array) => void

  /**
   * @param columns  length of the rows
   * @param onRow    called with each row as it is taken, in the order of replications
   */
  constructor(columns: number, onRow: (row: Float64Array) => void = () => {}) {
    this.counts = new Float64Array(columns)
    this.means = new Float64Array(columns)
    this.squares = new Float64Array(columns)
    this.#onRow = onRow
  }

  /** Takes a row; one that comes early is kept until its turn, and what follows a gap is never counted. */
  add(replication: number, row: Float64Array): void {
    this.#waiting.set(replication, row)
    for (let next = this.#waiting.get(this.taken); next !== undefined; next = this.#waiting.get(this.taken)) {
      this.#waiting.delete(this.taken)
      this.#take(next)
      this.taken += 1
      this.#onRow(next)
    }
  }

  /** Mean of a column; null where no row has a number there. */
  mean(column: number): number | null {
    return this.counts[column]! > 0 ? this.means[column]! : null
  }

  #take(row: Float64Array): void {
    for (let column = 0; column < row.length; column += 1) {
      const value = row[column]!
      if (Number.isNaN(value)) continue
      const count = this.counts[column]! + 1
      this.counts[column] = count
      const before = value - this.means[column]!
      this.means[column]! += before / count
      this.squares[column]! += before * (value - this.means[column]!)
    }
  }
}
