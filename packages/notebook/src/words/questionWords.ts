/** The heading of what a study tells: the scenario's own question where this study answers it, else the question that it does answer. */
import type { Scenario } from '@loopwright/scenario'

export type Topic = 'carriers' | 'output'

const TOPICS: Readonly<Record<Topic, { readonly words: RegExp; readonly question: (noun: string) => string }>> = {
  carriers: { words: /\b(carriers?|trays?|pallets?)\b/i, question: (noun) => `How many carriers does the ${noun} need?` },
  output: {
    words: /\b(output|throughput|promise[ds]?|make|makes|meet|meets|plan|an? hour|per (hour|shift))\b/i,
    question: (noun) => `What does the ${noun} make?`,
  },
}

/**
 * A scenario's question stands over a study only where its words are of the study's topic; one of carriers is not answered by the output of one count.
 *
 * @param noun  what the line is called: loop, open line
 */
export function questionFor(topic: Topic, { question }: Pick<Scenario, 'question'>, noun: string): string {
  const isOfCarriers = /\bhow many\b/i.test(question) && TOPICS.carriers.words.test(question)
  const answered = topic === 'carriers' ? isOfCarriers : !isOfCarriers && TOPICS.output.words.test(question)
  return answered ? question : TOPICS[topic].question(noun)
}
