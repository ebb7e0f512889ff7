/** different questions whose answers are kept */
const KEPT = 20_000

/**
 * A function that remembers what it has answered, up to a number of answers: long tables say few things often.
 *
 * @param of  the same answer to the same question, always
 * @example remembered(Math.sqrt)(9) // => 3
 */
export function remembered<Q, A>(of: (question: Q) => A): (question: Q) => A {
  const answers = new Map<Q, A>()
  return (question) => {
    const known = answers.get(question)
    if (known !== undefined) return known
    const answer = of(question)
    if (answers.size < KEPT) answers.set(question, answer)
    return answer
  }
}
