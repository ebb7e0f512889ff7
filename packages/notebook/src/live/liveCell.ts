/** The cell by which a page goes on simulating. */
import { readScenario } from '@loopwright/scenario'
import type { LiveCell } from '../cells/cell.ts'
import type { StoryOptions } from '../words/storyOptions.ts'
import type { LiveInput } from './liveInput.ts'
import { inputsOf } from './liveInputs.ts'

/** longer texts and data would make the page heavier than it may be */
const CHARACTERS_MAX = 300_000

/**
 * @param inputs  what may be changed; default: what the scenario usually offers
 * @returns       null where the text of the scenario is not at hand, cannot be read, or is too long to travel along
 */
export function liveCell(
  { scenarioText, scenarioFile, readBeside, variation = null }: StoryOptions,
  inputs?: readonly LiveInput[],
): LiveCell | null {
  if (scenarioText === undefined) return null
  const beside: Record<string, string> = {}
  const files = (path: string): string | null => {
    const text = readBeside?.(path) ?? null
    if (text !== null) beside[path] = text
    return text
  }
  const { scenario, notes } = readScenario(scenarioText, { files })
  if (scenario === null || notes === null) return null
  const characters = Object.values(beside).reduce((sum, text) => sum + text.length, scenarioText.length)
  if (characters > CHARACTERS_MAX) return null
  const source = { file: scenarioFile, text: scenarioText, beside, variation }
  return { kind: 'live', id: 'live', source, inputs: inputs ?? inputsOf(scenarioText, scenario, notes) }
}
