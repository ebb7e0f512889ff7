/** How often intervals of the mean hold what they promise, over studies of one line that share nothing. */
import { createSimulator, type LineSpec } from '@loopwright/line'
import { outputInterval, Tally } from '@loopwright/stats'
import { controlledMeans } from '../../packages/study/src/controls/controlledMeans.ts'
import { type RunUse, runUseOf } from '../../packages/study/src/controls/runUse.ts'
import { rowLayout, runRow } from '../../packages/study/src/runs/runRow.ts'

/** Mean and half-width of a study, plainly and as it is told. */
export interface ToldMean {
  readonly runs: number
  readonly plain: { readonly mean: number; readonly halfWidth: number }
  readonly told: { readonly mean: number; readonly halfWidth: number }
}

/** What many studies of as many runs each have shown. */
export interface Coverage {
  readonly runs: number
  readonly studies: number
  /** of the 95 % intervals, 0 … 1 */
  readonly plainHeld: number
  readonly toldHeld: number
  /** variance of the means that are told, over that of the plain ones */
  readonly variance: number
  /** half-width that is told over the plain one: median and most */
  readonly widthMedian: number
  readonly widthMost: number
}

/**
 * Studies of the line, each with a seed text of its own.
 *
 * @param sizes   numbers of runs, rising: the smaller studies are the beginnings of the largest
 * @param onStudy told how many are done
 * @returns       means by study and size, and the mean of all runs
 */
export function studiesOf(
  line: LineSpec,
  { studies, sizes, seed }: { readonly studies: number; readonly sizes: readonly number[]; readonly seed: string },
  onStudy: (done: number) => void = () => {},
): { readonly means: readonly ToldMean[]; readonly mean: number } {
  const simulator = createSimulator(line)
  const layout = rowLayout(line)
  const useOf = runUseOf(line, layout)
  const most = sizes.at(-1)!
  const all = new Tally()
  const means: ToldMean[] = []
  for (let study = 0; study < studies; study++) {
    const own = `${seed}-${study}`
    const units: number[] = []
    const uses: RunUse[] = []
    let gridlocks = 0
    for (let replication = 0; replication < most; replication++) {
      const run = simulator.run({ seed: own, replication })
      const row = runRow(layout, run)
      units.push(row[layout.units]!)
      uses.push(useOf(row))
      if (run.end.reason !== 'end of window') gridlocks++
      all.add(units.at(-1)!)
    }
    for (const runs of sizes) {
      const part = units.slice(0, runs)
      const plain = outputInterval(part)
      const told = controlledMeans(line, own, [{ carriers: line.carriers.count, units: part, uses: uses.slice(0, runs), gridlocks }])[0]
      means.push({ runs, plain, told: told ?? plain })
    }
    onStudy(study + 1)
  }
  return { means, mean: all.mean! }
}

/**
 * Coverage by number of runs.
 *
 * @param truth  the mean that is to be covered: of all runs of all studies, whose own error is small beside the intervals
 */
export function coverageOf(means: readonly ToldMean[], truth: number): Coverage[] {
  return [...new Set(means.map(({ runs }) => runs))].map((runs) => {
    const own = means.filter((one) => one.runs === runs)
    const held = (kind: 'plain' | 'told'): number =>
      own.filter((one) => Math.abs(one[kind].mean - truth) <= one[kind].halfWidth).length / own.length
    const variance = (kind: 'plain' | 'told'): number => Tally.of(own.map((one) => one[kind].mean)).sd! ** 2
    const widths = own.map(({ plain, told }) => told.halfWidth / plain.halfWidth).toSorted((a, b) => a - b)
    return {
      runs,
      studies: own.length,
      plainHeld: held('plain'),
      toldHeld: held('told'),
      variance: variance('told') / variance('plain'),
      widthMedian: widths[Math.floor(widths.length / 2)]!,
      widthMost: widths.at(-1)!,
    }
  })
}
