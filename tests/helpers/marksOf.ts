/** The marks of a chart by their kind, for its tests. */
import type { Area, Dot, Drawing, Mark, Path, Rule, Words } from '../../packages/charts/src/drawing/drawing.ts'

interface Drawn {
  readonly drawing: Drawing
}
type Kinds = { area: Area; dot: Dot; path: Path; rule: Rule; words: Words }

export function marksOf<K extends Mark['mark']>({ drawing }: Drawn, kind: K): Kinds[K][] {
  return drawing.marks.filter((mark) => mark.mark === kind) as Mark[] as Kinds[K][]
}

/** All lines of text. */
export const textsOf = (of: Drawn): string[] => marksOf(of, 'words').flatMap(({ text }) => text)
