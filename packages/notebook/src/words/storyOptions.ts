import type { FileRead, Problem, ScenarioNotes } from '@loopwright/scenario'

/** What a story knows beside the scenario and the result. */
export interface StoryOptions {
  /** path of the scenario file, as the reader would type it */
  readonly scenarioFile: string
  /** what stands in it: the page then tells which inputs are defaults. Default: it does not */
  readonly scenarioText?: string
  /** the same as it was read. Default: the text is read */
  readonly read?: FileRead
  /** named set of changes that was put into that text. Default: none */
  readonly variation?: string | null
  /** text of a data file that the scenario names; default: such files cannot be opened */
  readonly readBeside?: (path: string) => string | null
  /** warnings about the scenario: told beside every result. Default: none */
  readonly problems?: readonly Problem[]
  /** what the reader of the scenario made of it: clock times, shifts of a day. Default: not known */
  readonly notes?: Pick<ScenarioNotes, 'shiftStarts' | 'shiftsPerDay'>
  /** means as they are, with the luck of the windows simulated; default: without it, where that is shown to help */
  readonly plain?: boolean
}

/** Of a study that a notebook may ask more than once. */
export interface StudyStoryOptions extends StoryOptions {
  /** begins the ids of the cells that are about this very result. Default: the name of the study */
  readonly id?: string
}
