/** A value that the reader of a page may change, and how it gets into the scenario; what travels along with the page for that. */
import type { ThroughputGhost } from '@loopwright/charts'

/** The scenario behind a page, as the reader's changes are put into it. */
export interface LiveSource {
  /** path as the reader would type it */
  readonly file: string
  readonly text: string
  /** texts of the data files that it names, by their names in it */
  readonly beside: Readonly<Record<string, string>>
  /** named set of changes that was put into the text already; null: the text is that of the file */
  readonly variation: string | null
}

export interface LiveInput {
  /** its own within the page; names it in the address: `carriers`, `S6.time` */
  readonly key: string
  /** the heading under which it stands */
  readonly group: LiveGroup
  readonly label: string
  /** what the file says, as it is shown and may be typed: `12`, `15 m/min`, `61.8 s` */
  readonly file: string
  readonly shown: LiveField
  readonly does: LiveEffect
}

export type LiveGroup = 'Line' | 'Stations' | 'Stops' | 'Products' | 'Operators' | 'Of this notebook'

/** in this order on the page */
export const LIVE_GROUPS: readonly LiveGroup[] = ['Of this notebook', 'Line', 'Stations', 'Stops', 'Products', 'Operators']

export type LiveField =
  /** a slider and a field; the unit stands behind the number in the field */
  | { readonly kind: 'range'; readonly from: number; readonly to: number; readonly step: number; readonly unit: string }
  /** one of some texts */
  | { readonly kind: 'choice'; readonly options: readonly { readonly value: string; readonly label: string }[] }

/** How a text becomes changes of the scenario. */
export type LiveEffect =
  /** it stands at this path, as it is */
  | { readonly kind: 'path'; readonly path: string }
  /** a mean time: every time at these paths is scaled by it */
  | { readonly kind: 'times'; readonly paths: readonly string[]; readonly meanSeconds: number }
  /** the share of one variant: the others keep their proportions */
  | { readonly kind: 'share'; readonly variant: string }
  /** how many people like this named operator there are */
  | { readonly kind: 'people'; readonly operator: string }

/** What of a curve travels along with the page. */
export interface LiveCurve {
  /** what one window is called: "shift" */
  readonly per: string
  /** the choice of the page that a click on a count makes */
  readonly choice: string
  /** the count that the answer of the page names first; null: none */
  readonly named: number | null
  /** its means and its axis */
  readonly ghost: ThroughputGhost
}
