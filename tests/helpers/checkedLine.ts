/** A line that the tests of the check read, with all that the reader made of it. */
import { readScenario } from '@loopwright/scenario'
import { lineFacts } from '@loopwright/study/change'

export function read(text: string) {
  const { scenario, notes, problems } = readScenario(text)
  if (scenario === null) throw new Error(JSON.stringify(problems))
  return { scenario, notes, problems, facts: lineFacts(scenario.line) }
}
