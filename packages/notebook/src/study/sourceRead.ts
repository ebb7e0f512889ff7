/** The scenario file behind a story, as it was read: its defaults and its values are told without reading it again. */
import { type FileRead, readScenario } from '@loopwright/scenario'
import type { StoryOptions } from '../words/storyOptions.ts'

/** What a story was given of it, else what its text gives; null: neither, or the text has errors. */
export function sourceRead({ read, scenarioText, readBeside = () => null }: StoryOptions): FileRead | null {
  if (read !== undefined) return read
  if (scenarioText === undefined) return null
  const found = readScenario(scenarioText, { files: readBeside })
  return found.scenario === null ? null : found
}
