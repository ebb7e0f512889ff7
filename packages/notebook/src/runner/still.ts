import type { Cell } from '../cells/cell.ts'
import { shownView } from '../cells/cell.ts'

/** pixels; width of a picture that cannot follow the window */
const STILL_WIDTH = 760

/** The first view of every chart of one's own as SVG text, by cell id, for readers without scripts. */
export async function stillPictures(cells: readonly Cell[]): Promise<ReadonlyMap<string, string>> {
  const charts = cells.flatMap((cell) => {
    const picture = cell.kind === 'chart' ? shownView(cell.views).picture : null
    return picture?.kind === 'chart' ? [{ id: cell.id, own: picture.spec }] : []
  })
  if (charts.length === 0) return new Map()
  const [vega, { compile }, { expressionInterpreter }, { vegaConfig }] = await Promise.all([
    import('vega'),
    import('vega-lite'),
    import('vega-interpreter'),
    import('@loopwright/charts'),
  ])
  const stills = new Map<string, string>()
  for (const { id, own } of charts) {
    const spec = { ...own, width: STILL_WIDTH } as Parameters<typeof compile>[0]
    const compiled = compile(spec, { config: vegaConfig('light') }).spec
    const view = new vega.View(vega.parse(compiled, undefined, { ast: true }), { renderer: 'none', expr: expressionInterpreter })
    stills.set(id, thinned(await view.toSVG()))
    view.finalize()
  }
  return stills
}

/** Numbers of a drawing to a hundredth of a pixel: nobody sees the rest. */
function thinned(svg: string): string {
  return svg.replace(/\d+\.\d{3,}/g, (digits) => String(Math.round(Number(digits) * 100) / 100))
}
