/** What a reader must know before anything is bought, built or promised on these numbers. */
import type { LineSpec } from '@loopwright/line'
import type { SweepResult } from '@loopwright/study'
import type { CautionCell } from '../cells/cell.ts'
import { counted } from '../words/countedWords.ts'
import { listEndsWarning } from '../words/listEnds.ts'
import type { Period } from './period.ts'

/** What the figures are no substitute for: stands on every page. */
export const USE: CautionCell = {
  kind: 'caution',
  id: 'caution-use',
  tone: 'caution',
  title: 'What these figures are, and what they are not',
  brief:
    'Screening only: no risk assessment and no statement of compliance. Local codes, the standards that apply and a qualified professional decide; validate by measurement on the machine.',
  markdown: `Screening only. These figures rest on the inputs listed above, to show what is worth a closer look. They are not a risk
    assessment and not a statement of compliance. Local codes, the current edition of the standards that apply, and a qualified (where required,
    licensed) professional decide on speeds, gaps between carriers, release modes, guarding and the work of people at the line. Validate stop times,
    forces and cycle times by measurement on the machine.

    Standards to look into first: EN 619, ASME B20.1, 29 CFR 1926.555, ISO 12100, ISO 13849-1, IEC 60204-1, ISO 13850.`,
}

/** What always holds: what the figures are no substitute for, and what the model leaves out. */
export function standingCautions(line: LineSpec): CautionCell[] {
  return [
    USE,
    {
      kind: 'caution',
      id: 'caution-model',
      tone: 'caution',
      title: 'What the model leaves out',
      brief: 'Times are taken as exactly known; jams, rework, scrap, learning and absence count only where an input stands for them.',
      markdown: modelLimits(line),
    },
  ]
}

function modelLimits(line: LineSpec): string {
  const arrives = [line.supply, ...line.stations.map((station) => station.supply)].some(
    (one) => one !== null && one.arrivals.kind !== 'always',
  )
  const always = arrives ? 'Products come as the inputs say' : 'Products are always there at the load station'
  const supply = line.mix.kind === 'list' ? 'Products come from a list and end with it' : always
  const stops = line.breakdowns.length === 0 ? '- Nothing breaks down: the inputs name no stops, so real output will be lower.' : null
  return [
    line.operators.length === 0
      ? '- Every station has its own operator, always there in working time; nobody walks between stations.'
      : '- Operators are always there in working time, and walk and work at the same pace all day; stations that nobody named covers have their own.',
    `- ${supply}, and ${line.stations.every(({ receiver }) => receiver === null) ? 'the place after unload is always free' : 'what takes them after unload is as steady as its times say'}.`,
    '- No jams at zone sensors, safety stops, rework, scrap, learning or absence, unless an input above stands for them.',
    stops,
    '- The times are taken as exactly known. How well they are known from a time study is not part of any interval here.',
  ]
    .filter((item) => item !== null)
    .join('\n')
}

type Doubted = Pick<SweepResult, 'partial' | 'replications' | 'counts' | 'answer'>

/**
 * What is wrong or doubtful about this very result; empty where nothing is.
 *
 * @param line  whose runs they are
 * @param most  carriers that can move at all
 */
export function warnings(result: Doubted, period: Period, line: Pick<LineSpec, 'stations'>, most = Infinity): CautionCell[] {
  const cells: CautionCell[] = []
  const warn = (id: string, title: string, markdown: string): void => {
    cells.push({ kind: 'caution', id: `warning-${id}`, tone: 'warning', title, markdown })
  }
  if (result.partial) {
    const [least, most] = [Math.min(...counts(result)), Math.max(...counts(result))]
    const done = least === most ? `${least}` : `${least} to ${most}`
    warn(
      'partial',
      'Stopped early',
      `${done} of ${result.replications} ${period.many}${result.counts.length === 1 ? '' : ' of each count'} are simulated. The numbers hold for these; the intervals are wider.`,
    )
  }
  const still = result.counts.filter((count) => count.gridlocks > 0)
  if (still.length > 0) {
    const list = still.map((count) => `${counted(count.carriers, 'carrier')}: in ${count.gridlocks} of ${count.replications} runs`)
    warn(
      'gridlock',
      `Gridlock: the ${period.line} stands still`,
      `${list.map((item) => `- ${item}`).join('\n')}\n\nNothing moves any more in such a run; its output is what was made before. A count that stands still in any run is not recommended.`,
    )
  }
  const ends = result.counts.map(({ carriers, outOfProducts, replications }) => ({
    name: counted(carriers, 'carrier'),
    line,
    outOfProducts,
    runs: replications,
  }))
  cells.push(...listEndsWarning('products', ends, period))
  if (
    result.answer?.bestAtUpperEnd === true &&
    result.counts.length > 1 &&
    result.answer.best < most &&
    still.every(({ carriers }) => carriers !== result.answer!.best)
  ) {
    warn(
      'upper-end',
      'The best count is the largest tried',
      `More than ${counted(result.answer.best, 'carrier')} may make more: add larger counts.`,
    )
  }
  return cells
}

function counts(result: Doubted): number[] {
  return result.counts.map((count) => count.replications)
}
