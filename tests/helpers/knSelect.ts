import { type KnChoice, type KnOptions, knSteps } from '@loopwright/stats/procedures'

/**
 * The procedure KN, driven by a function.
 *
 * @param observe  outputs of one system in one replication
 */
export function knSelect(options: KnOptions, observe: (system: number, replication: number) => number): KnChoice {
  const steps = knSteps(options)
  let step = steps.next()
  while (!step.done) {
    const { from, below, systems } = step.value
    step = steps.next(systems.map((system) => Array.from({ length: below - from }, (_, j) => observe(system, from + j))))
  }
  return step.value
}
