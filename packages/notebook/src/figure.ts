import type { Table } from './table.ts'

/** A picture with all that goes with it. */
export interface Figure {
  /** what the picture shows of these very data, one sentence: the caption */
  readonly finding: string
  readonly picture: Picture
  /** what the picture shows, for those who cannot see it */
  readonly alt: string
  readonly howToRead: string
  /** the same numbers */
  readonly table: Table
}

export type Picture =
  /** a vega-lite specification */
  | { readonly kind: 'chart'; readonly spec: object }
  | { readonly kind: 'svg'; readonly svg: string }
