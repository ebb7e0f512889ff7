/** The cell by which a page goes on simulating. */
import type { LiveCell } from '../cells/cell.ts'
import { sourceRead } from '../study/sourceRead.ts'
import type { StoryOptions } from '../words/storyOptions.ts'
import type { LiveInput } from './liveInput.ts'
import { inputsOf } from './liveInputs.ts'

/** longer texts and data would make the page heavier than it may be */
const CHARACTERS_MAX = 300_000

/**
 * @param inputs  what may be changed; default: what the scenario usually offers
 * @returns       null where the text of the scenario is not at hand, cannot be read, or is too long to travel along
 */
export function liveCell(options: StoryOptions, inputs?: readonly LiveInput[]): LiveCell | null {
  const { scenarioText, scenarioFile, variation = null } = options
  const read = sourceRead(options)
  if (scenarioText === undefined || read === null) return null
  const { beside } = read
  const characters = Object.values(beside).reduce((sum, text) => sum + text.length, scenarioText.length)
  if (characters > CHARACTERS_MAX) return null
  const source = { file: scenarioFile, text: scenarioText, beside, variation }
  return { kind: 'live', id: 'live', source, inputs: inputs ?? inputsOf(read) }
}
