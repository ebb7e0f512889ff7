/** What page and worker say to each other. */
import type { Figure } from '@loopwright/charts'
import type { LiveValues } from '../../live/liveChanges.ts'
import type { Watched } from '../../live/liveSession.ts'
import type { LiveAsk, LiveKept, LiveSetting, LiveTold } from '../../live/liveTold.ts'
import type { LiveData } from '../../page/pageData.ts'
import type { WatchedLine } from '../../replay/watchedLine.ts'

export type ToEngine =
  | { readonly kind: 'open'; readonly data: LiveData }
  | { readonly kind: 'ask'; readonly ask: LiveAsk }
  | { readonly kind: 'watch'; readonly id: number; readonly values: LiveValues; readonly replication: number }
  /** the timeline of the run that is watched */
  | { readonly kind: 'stretch'; readonly id: number; readonly fromSeconds: number; readonly toSeconds: number }
  | { readonly kind: 'keep'; readonly setting: LiveSetting; readonly replications: number }

export type FromEngine =
  /** the scenario is read */
  | { readonly kind: 'opened'; readonly line: WatchedLine }
  /** heard: an answer will come */
  | { readonly kind: 'begun'; readonly id: number }
  | LiveTold
  | LiveKept
  | { readonly kind: 'watched'; readonly watch: number; readonly watched: Watched }
  | { readonly kind: 'not watched'; readonly watch: number; readonly text: string }
  | {
      readonly kind: 'stretched'
      readonly watch: number
      readonly fromSeconds: number
      readonly toSeconds: number
      readonly figure: Figure
    }
  | { readonly kind: 'failed'; readonly message: string }
