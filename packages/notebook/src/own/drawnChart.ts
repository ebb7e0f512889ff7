/** A vega-lite specification as SVG text, without a browser; or why nothing would be seen. */

/** What came of drawing a chart. */
export interface DrawnChart {
  readonly svg: string
  /** marks that stand for data */
  readonly marks: number
  /** what the compiler found odd */
  readonly warnings: readonly string[]
}

/** pixels; width of a picture that cannot follow the window */
const STILL_WIDTH = 760

/** @throws Error  if it is no specification */
export async function drawnChart(spec: object, look: 'light' | 'print' = 'light'): Promise<DrawnChart> {
  const [vega, { compile }, { expressionInterpreter }, { vegaConfig }] = await Promise.all([
    import('vega'),
    import('vega-lite'),
    import('vega-interpreter'),
    import('@loopwright/charts/draw'),
  ])
  const warnings: string[] = []
  const note = (...words: readonly unknown[]) => {
    warnings.push(words.join(' '))
    return logger
  }
  const logger = { level: () => logger, error: note, warn: note, info: () => logger, debug: () => logger }
  const sized = widened(spec) as Parameters<typeof compile>[0]
  const compiled = compile(sized, { config: vegaConfig(look), logger: logger as never }).spec
  const view = new vega.View(vega.parse(compiled, undefined, { ast: true }), {
    renderer: 'none',
    expr: expressionInterpreter,
    logger: logger as never,
  })
  const svg = await view.toSVG()
  const marks = markCount((view.scenegraph() as unknown as { readonly root: Group }).root)
  view.finalize()
  return { svg, marks, warnings }
}

/** As wide as its place, where it is one picture; several beside each other have widths of their own. */
const widened = (spec: object): object => ('mark' in spec || 'layer' in spec ? { ...spec, width: STILL_WIDTH } : spec)

interface Group {
  readonly role?: string
  readonly marktype?: string
  readonly items?: readonly Group[]
}

function markCount({ role, marktype, items = [] }: Group): number {
  const own = role === 'mark' && marktype !== 'group' ? items.length : 0
  return items.reduce((sum, item) => sum + markCount(item), own)
}

/** Why a chart of one's own would show nothing, or not what was meant; null: it is drawn. */
export async function chartFault(spec: object): Promise<string | null> {
  try {
    const { marks, warnings } = await drawnChart(spec)
    if (marks === 0) return 'the chart is empty: no mark stands for any row'
    const odd = warnings.find((each) => /infinite extent|invalid|cannot|not supported|unrecognized|dropped/i.test(each))
    return odd === undefined ? null : `the chart cannot be drawn as it is written: ${odd}`
  } catch (error) {
    return `the chart cannot be drawn: ${error instanceof Error ? error.message : String(error)}`
  }
}
