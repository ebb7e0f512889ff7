/** The three limits of the law as lines, named above the chart, each with a piece of its line. (MODEL.md §12) */
import type { SweepResult } from '@loopwright/study'
import type { Layer } from '../draw/frame.ts'
import { LAW_DASHES } from '../draw/theme.ts'

export const BRANCHES = ['carrier-limited', 'station-limited', 'space-limited'] as const

export interface LawBranch {
  readonly branch: (typeof BRANCHES)[number]
  readonly points: readonly { readonly carriers: number; readonly units: number }[]
}

/** pixels; a piece of line */
const SAMPLE_PIXELS = 26
/** pixels; a piece of line and its name */
const NAME_PIXELS = 124
/** three names stand side by side in no less */
const NARROW = 'width < 400'

/**
 * The branches that limit some count of the sweep, in units per window; each drawn over the counts where it is the least, and one count beyond.
 */
export function lawBranches({ counts, lawSeconds }: Pick<SweepResult, 'counts' | 'lawSeconds'>): LawBranch[] {
  const terms = ['carrierLimited', 'stationLimited', 'spaceLimited'] as const
  return BRANCHES.flatMap((branch, index): LawBranch[] => {
    const holds = counts.map(({ law }) => law?.regime === branch)
    if (!holds.includes(true)) return []
    const points = counts.flatMap(({ carriers, law }, at) => {
      const rate = law?.[terms[index]!] ?? null
      return rate !== null && (holds[at] || holds[at - 1] || holds[at + 1]) ? [{ carriers, units: rate * lawSeconds }] : []
    })
    return [{ branch, points }]
  })
}

/**
 * Lines, clipped to the chart, and their names in a row above it: the first to the left, the last to the right.
 *
 * @param branches  at most three
 * @param span      of the upright axis
 */
export function lawLayers(branches: readonly LawBranch[], span: readonly [number, number], exact: boolean): Layer[] {
  if (branches.length === 0) return []
  const words = exact ? 'Limits by the law, exact' : 'Limits by the law, an estimate'
  const heading = { expr: `${NARROW} ? ${row(3)} : ${row(2)}` }
  return [
    ...branches.map(({ branch, points }) => lineOf(branch, points, span)),
    {
      data: { values: [{}] },
      mark: { type: 'text', style: 'note', align: 'left', baseline: 'middle', x: 0, y: heading, text: words },
      encoding: {},
    },
    // keeps the room of the third row, so that the height does not hang on the width
    { data: { values: [{}] }, mark: { type: 'text', style: 'note', x: 0, y: row(3), text: '\u00a0' }, encoding: {} },
    ...branches.flatMap(({ branch }, index) => nameOf(branch, index, branches.length)),
  ]
}

function lineOf(branch: LawBranch['branch'], points: LawBranch['points'], [low, high]: readonly [number, number]): Layer {
  return {
    data: { values: points.map((point) => ({ ...point })) },
    mark: { type: 'line', style: 'law', clip: true, strokeDash: [...LAW_DASHES[BRANCHES.indexOf(branch)]!] },
    encoding: {
      x: { field: 'carriers', type: 'quantitative' },
      y: { field: 'units', type: 'quantitative', scale: { domain: [low, high] } },
    },
  }
}

/** A piece of the line, then the name: in one row where there is room, else in two. */
function nameOf(branch: LawBranch['branch'], index: number, of: number): Layer[] {
  const side = index === 0 ? '0' : index === of - 1 ? `width - ${NAME_PIXELS}` : `(width - ${NAME_PIXELS}) / 2`
  const x = `(${NARROW} ? ${index === 1 ? NAME_PIXELS : 0} : ${side})`
  const y = { expr: `${NARROW} ? ${row(index === 2 ? 1 : 2)} : ${row(1)}` }
  const strokeDash = [...LAW_DASHES[BRANCHES.indexOf(branch)]!]
  return [
    {
      data: { values: [{}] },
      mark: {
        type: 'point',
        style: 'law',
        shape: 'stroke',
        size: SAMPLE_PIXELS ** 2,
        strokeDash,
        x: { expr: `${x} + ${SAMPLE_PIXELS / 2}` },
        y,
      },
      encoding: {},
    },
    {
      data: { values: [{}] },
      mark: { type: 'text', style: 'note', align: 'left', baseline: 'middle', x: { expr: `${x} + ${SAMPLE_PIXELS + 6}` }, y, text: branch },
      encoding: {},
    },
  ]
}

/** pixels above the chart of the first, second, third row of text, from below */
function row(number: 1 | 2 | 3): number {
  return 2 - 17 * number
}
