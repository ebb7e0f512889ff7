/** The marks of the throughput chart: band, steps, points, plan and the chosen count. */
import { formatNumber } from '../table/format.ts'
import { carriersText, type Layer } from '../draw/frame.ts'

export interface ThroughputMarks {
  readonly first: number
  readonly last: number
  readonly counts: number
  /** of the upright axis */
  readonly span: readonly [number, number]
  readonly chosen: number | null
  readonly plan: number | null
  readonly per: string
  /** where the line stood still */
  readonly still: readonly StillRun[]
}

/** Counts side by side at which the line stood still in some windows. */
export interface StillRun {
  /** where the word begins or ends, on the level axis */
  readonly carriers: number
  /** above which it stands, on the upright axis */
  readonly units: number
  readonly align: 'left' | 'right'
  /** which counts they are */
  readonly text: string
}

/** What lies behind the lines of the law. */
export function bandLayers({ first, last, span, per }: ThroughputMarks): Layer[] {
  const x = {
    field: 'left',
    type: 'quantitative',
    title: 'Number of carriers',
    scale: { domain: [first - 0.5, last + 0.5] as [number, number], nice: false, zero: false },
    axis: { format: 'd', tickMinStep: 1, tickCount: last - first + 1, labelOverlap: true, labelSeparation: 6 },
  } as const
  const y = {
    type: 'quantitative',
    title: `Units per ${per}`,
    scale: { domain: [...span] as [number, number], nice: false, zero: false },
    axis: { tickCount: 6, grid: true },
  } as const
  const x2 = { field: 'right' } as const
  return [
    {
      mark: { type: 'rect', style: 'band' },
      encoding: { x, x2, y: { ...y, field: 'p10' }, y2: { field: 'p90' }, tooltip: { field: 'tip' } },
    },
    ...(['p10', 'p90'] as const).map(
      (field): Layer => ({ mark: { type: 'rule', style: 'bandEdge' }, encoding: { x, x2, y: { ...y, field } } }),
    ),
  ]
}

/** What lies before them. */
export function meanLayers({ first, last, counts, chosen, plan, still }: ThroughputMarks): Layer[] {
  const carriers = { field: 'carriers', type: 'quantitative' } as const
  const units = (field: string) => ({ field, type: 'quantitative' }) as const
  const tooltip = { field: 'tip' } as const
  return [
    ...(plan === null ? [] : planLayers(plan)),
    ...(counts > 1
      ? [{ mark: { type: 'line', style: 'meanStep', interpolate: 'step' }, encoding: { x: carriers, y: units('mean') } } satisfies Layer]
      : []),
    {
      transform: [
        { calculate: 'datum.carriers - 0.3', as: 'from' },
        { calculate: 'datum.carriers + 0.3', as: 'to' },
      ],
      mark: { type: 'rect', style: 'mean', clip: true },
      encoding: { x: units('from'), x2: { field: 'to' }, y: units('low'), y2: { field: 'high' }, tooltip },
    },
    { mark: { type: 'point', style: 'meanDot' }, encoding: { x: carriers, y: units('mean'), tooltip } },
    ...(chosen === null ? [] : chosenLayers(chosen, first, last)),
    ...stillLayers(still),
  ]
}

/** The words once for counts side by side, above their marks, on paper of its own: it may stand on a band, a bar or a line. */
function stillLayers(still: readonly StillRun[]): Layer[] {
  return still.flatMap(({ carriers, units, align, text }) =>
    (['halo', 'words'] as const).map(
      (style): Layer => ({
        data: { values: [{ carriers, units }] },
        mark: { type: 'text', style: ['words', style], align, baseline: 'bottom', dy: -4, text, strokeJoin: 'round' },
        encoding: { x: { field: 'carriers', type: 'quantitative' }, y: { field: 'units', type: 'quantitative' } },
      }),
    ),
  )
}

function planLayers(plan: number): Layer[] {
  const y = { datum: plan, type: 'quantitative' } as const
  return [
    { data: { values: [{}] }, mark: { type: 'rule', style: 'plan' }, encoding: { y } },
    {
      data: { values: [{}] },
      mark: {
        type: 'text',
        style: 'planText',
        align: 'left',
        baseline: 'middle',
        x: { expr: 'width + 6' },
        dy: -7,
        text: ['plan', formatNumber(plan, 0)],
      },
      encoding: { y },
    },
  ]
}

/** A dot in the accent colour, and a line down to the number of carriers. */
function chosenLayers(chosen: number, first: number, last: number): Layer[] {
  const filter = [{ filter: 'datum.chosen' }]
  const carriers = { field: 'carriers', type: 'quantitative' } as const
  const mean = { field: 'mean', type: 'quantitative' } as const
  const left = chosen - first <= last - chosen
  return [
    { transform: filter, mark: { type: 'rule', style: 'chosenLine', y2: 'height' }, encoding: { x: carriers, y: mean } },
    { transform: filter, mark: { type: 'point', style: 'chosenDot' }, encoding: { x: carriers, y: mean, tooltip: { field: 'tip' } } },
    {
      transform: filter,
      mark: {
        type: 'text',
        style: 'chosenText',
        align: left ? 'left' : 'right',
        baseline: 'bottom',
        dx: left ? 6 : -6,
        y: { expr: 'height - 6' },
        text: carriersText(chosen),
      },
      encoding: { x: carriers },
    },
  ]
}
