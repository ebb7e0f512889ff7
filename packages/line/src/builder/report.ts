/** Findings about a sketch, all at once, by where they stand in it. */
import type { Sentence } from '../check/sentence.ts'

/** A finding about a line that was written in code: what, where, and how to mend it. The words are those of a scenario file. */
export interface LineProblem extends Sentence {
  /** such as `stations.S2.zone` */
  readonly path: string
}

/** A line that cannot be built. Its message tells every finding, `problems` has them one by one. */
export class LineError extends Error {
  override readonly name = 'LineError'
  readonly problems: readonly LineProblem[]

  constructor(problems: readonly LineProblem[]) {
    const told = problems.map(({ path, message, fix }) => `${path}: ${message}; ${fix}`)
    super(told.length === 1 ? told[0]! : `${told.length} problems\n${told.join('\n')}`)
    this.problems = problems
  }
}

export interface Report {
  add(path: string, sentence: Sentence): void
  /** and nothing more about this place, or what stands in it: it cannot be read */
  close(path: string, sentence: Sentence): void
  readonly problems: readonly LineProblem[]
}

/** Each finding once, in the order in which they are found. */
export function createReport(): Report {
  const problems: LineProblem[] = []
  const closed: string[] = []
  const isClosed = (path: string): boolean =>
    closed.some((place) => path.startsWith(place) && (path.length === place.length || '.['.includes(path[place.length]!)))
  const add = (path: string, sentence: Sentence): void => {
    if (isClosed(path)) return
    if (!problems.some((problem) => problem.path === path && problem.message === sentence.message)) problems.push({ path, ...sentence })
  }
  return {
    problems,
    add,
    close(path, sentence) {
      add(path, sentence)
      closed.push(path)
    },
  }
}
