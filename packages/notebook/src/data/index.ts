// What was timed
export { timesStory } from '../times/timesStory.ts'
export type { TimesStory, TimesStoryOptions } from '../times/timesStory.ts'
export type { ReadFile } from '../times/accountCells.ts'

// What stood
export { stopLogStory } from '../stopLog/stopLogStory.ts'
export type { StopLogStory } from '../stopLog/stopLogStory.ts'

// What was ordered
export { mixStory } from '../mix/mixStory.ts'
export type { MixStory } from '../mix/mixStory.ts'

// A line of measured data
export { assembleStory, folderCells, folderWarnings } from '../assemble/assembleStory.ts'
export type { AssembleStory, AssembledData } from '../assemble/assembleStory.ts'

// What the inputs do not know
export { doubtStory, doubtOf } from '../doubt/doubtStory.ts'
export type { DoubtStory, InputDoubt, OutputDoubt } from '../doubt/doubtStory.ts'

// How tasks are shared
export { balanceStory } from '../balance/balanceStory.ts'
export type { BalanceStory, BalanceStoryOptions } from '../balance/balanceStory.ts'
