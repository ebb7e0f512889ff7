/** What page and worker say to each other. */
import type { LiveAsk, LiveKept, LiveSetting, LiveTold } from '../../live/liveTold.ts'
import type { LiveData } from '../../page/pageData.ts'

export type ToEngine =
  | { readonly kind: 'open'; readonly data: LiveData }
  | { readonly kind: 'ask'; readonly ask: LiveAsk }
  | { readonly kind: 'keep'; readonly setting: LiveSetting; readonly replications: number }

export type FromEngine =
  /** heard: an answer will come */
  { readonly kind: 'begun'; readonly id: number } | LiveTold | LiveKept | { readonly kind: 'failed'; readonly message: string }
