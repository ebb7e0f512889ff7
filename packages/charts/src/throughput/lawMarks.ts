/** The three limits of the law as lines, each with its name in the key. (MODEL.md §12) */
import type { SweepResult } from '@loopwright/study'
import type { KeyEntry, Path } from '../drawing/drawing.ts'
import { LAW_DASHES } from '../draw/theme.ts'

const BRANCHES = ['carrier-limited', 'station-limited', 'space-limited'] as const

const LIMITS = { 'carrier-limited': 'carriers', 'station-limited': 'station', 'space-limited': 'space' } as const

export interface LawBranch {
  readonly branch: (typeof BRANCHES)[number]
  readonly points: readonly { readonly carriers: number; readonly units: number }[]
}

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

/** A line for each branch, told apart by its dashes. */
export function lawLines(branches: readonly LawBranch[]): Path[] {
  return branches.map(({ branch, points }) => ({
    mark: 'path',
    points: points.map(({ carriers, units }) => [carriers, units] as const),
    ink: 'law',
    dash: dashOf(branch),
  }))
}

/** What each branch is limited by, with a piece of its line; the first says what they are. */
export function lawKey(branches: readonly LawBranch[], exact: boolean): KeyEntry[] {
  return branches.map(({ branch }, index) => ({
    text: index === 0 ? `${exact ? 'law, exact' : 'law, an estimate'}: limited by ${LIMITS[branch]}` : `by ${LIMITS[branch]}`,
    sample: 'line',
    ink: 'law',
    dash: dashOf(branch),
  }))
}

const dashOf = (branch: LawBranch['branch']): readonly number[] => LAW_DASHES[BRANCHES.indexOf(branch)]!
