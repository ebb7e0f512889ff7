/** What the page's script needs: the views of every cell that is drawn or switched. Lies in the page as JSON. */
import type { Views } from '../cell.ts'
import type { Figure } from '../figure.ts'
import type { Table } from '@loopwright/charts'
import { type Patch, difference, patched } from './patch.ts'

export interface PageData {
  readonly figures: Readonly<Record<string, PackedViews>>
  readonly tables: Readonly<Record<string, PackedViews>>
}

/** The first view as it is, the others as what differs from it. */
export interface PackedViews {
  readonly choice: string | null
  readonly shown: string
  readonly keys: readonly string[]
  readonly first: unknown
  /** one per key; null: equal to the first */
  readonly patches: readonly (Patch | null)[]
}

export function packViews<T extends Figure | Table>(views: Views<T>): PackedViews {
  const contents: unknown[] = views.of.map((view) => JSON.parse(JSON.stringify(view.content)))
  return {
    choice: views.choice,
    shown: views.shown,
    keys: views.of.map((view) => view.key),
    first: contents[0],
    patches: contents.map((content) => difference(contents[0], content)),
  }
}

export function unpackView(packed: PackedViews, key: string): unknown {
  return patched(packed.first, packed.patches[packed.keys.indexOf(key)] ?? null)
}
