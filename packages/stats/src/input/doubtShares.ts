import { tooFew, unequalLength } from '../messages.ts'
import { needSample } from '../samples.ts'

/** What one input adds to the doubt of an output. */
export interface DoubtShare {
  /** output per unit of the input's level: slope of the regression */
  readonly slope: number
  /** slope² × variance of the level */
  readonly variance: number
}

/**
 * How the spread of an output over redrawn inputs falls on them: slopes of a straight-line regression on all levels together.
 *
 * @param outputs  one for each draw
 * @param levels   by draw, then by input: such as the logarithm of its mean. More draws than inputs, by two at least
 * @returns        one for each input; a level that does not vary has slope 0
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_UNEQUAL_LENGTH
 * @see Song & Nelson, Quickly assessing contributions to input uncertainty (2015), from memory
 * @example doubtShares([1, 3, 5, 7], [[0], [1], [2], [3]])[0].slope // => 2
 */
export function doubtShares(outputs: readonly number[], levels: readonly (readonly number[])[]): DoubtShare[] {
  needSample('shares of doubt', outputs, 'draw', 2)
  if (levels.length !== outputs.length) throw unequalLength('The list of outputs', outputs.length, 'the levels', levels.length)
  const inputs = levels[0]!.length
  if (outputs.length < inputs + 2) throw tooFew('shares of doubt', outputs.length, 'draw', inputs + 2)
  const n = outputs.length
  const mean = (of: (draw: number) => number): number => outputs.reduce((sum, _, draw) => sum + of(draw), 0) / n
  const means = Array.from({ length: inputs }, (_, input) => mean((draw) => levels[draw]![input]!))
  const outputMean = mean((draw) => outputs[draw]!)
  const product = (a: (draw: number) => number, b: (draw: number) => number): number =>
    outputs.reduce((sum, _, draw) => sum + a(draw) * b(draw), 0) / (n - 1)
  const off = (input: number) => (draw: number) => levels[draw]![input]! - means[input]!
  const variances = means.map((_, input) => product(off(input), off(input)))
  const used = variances.flatMap((variance, input) => (variance > 1e-18 ? [input] : []))
  const matrix = used.map((a) => [...used.map((b) => product(off(a), off(b))), product(off(a), (draw) => outputs[draw]! - outputMean)])
  const slopes = solved(matrix)
  return variances.map((variance, input) => {
    const slope = used.includes(input) ? slopes[used.indexOf(input)]! : 0
    return { slope, variance: slope ** 2 * variance }
  })
}

/** Gaussian elimination with the largest pivot; a direction that the data do not tell gets 0. */
function solved(rows: number[][]): number[] {
  const size = rows.length
  for (let at = 0; at < size; at++) {
    const pivot = rows.slice(at).reduce((best, row, index) => (Math.abs(row[at]!) > Math.abs(rows[best]![at]!) ? at + index : best), at)
    ;[rows[at], rows[pivot]] = [rows[pivot]!, rows[at]!]
    const head = rows[at]!
    if (Math.abs(head[at]!) < 1e-15) continue
    for (const row of rows) {
      if (row === head) continue
      const factor = row[at]! / head[at]!
      for (let column = at; column <= size; column++) row[column]! -= factor * head[column]!
    }
  }
  return rows.map((row, at) => (Math.abs(row[at]!) < 1e-15 ? 0 : row[size]! / row[at]!))
}
