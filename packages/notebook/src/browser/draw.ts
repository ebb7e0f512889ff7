/** Charts of one's own, by vega-lite: in a page that has some, and in no other. */
import { vegaConfig } from '@loopwright/charts/draw'
import embed, { type Result, type VisualizationSpec } from 'vega-embed'
import { expressionInterpreter } from 'vega-interpreter'

/** what is drawn in each place now, and the number of the last order to draw there */
interface Drawing {
  order: number
  result: Result | null
}

const drawings = new Map<HTMLElement, Drawing>()

/** Gives every chart this width, or with null that of its place, and the height that its key then needs. Done before the next picture of the page is taken: print waits for nobody. */
export function setWidth(pixels: number | null): void {
  for (const [place, { result }] of drawings) {
    result?.view.signal('width', pixels ?? place.clientWidth).run()
    // axes and padding make it narrower, so that the key may take a line more
    result?.view.resize().run()
  }
}

/**
 * Draws a chart as SVG in place of what was there.
 * Expressions are interpreted, never compiled, as the page allows no code but its own. Of several orders for one place the last one wins.
 */
export async function draw(place: HTMLElement, spec: object): Promise<void> {
  const drawing = drawings.get(place) ?? { order: 0, result: null }
  drawings.set(place, drawing)
  const order = ++drawing.order
  const canvas = document.createElement('div')
  canvas.className = 'chart'
  canvas.setAttribute('aria-hidden', 'true') // the place itself says what the picture shows
  if (place.clientHeight > 0) place.style.setProperty('min-height', `${place.clientHeight}px`)
  place.replaceChildren(canvas)
  // several pictures beside each other have widths of their own
  const alone = 'mark' in spec || 'layer' in spec
  const result = await embed(canvas, (alone ? { ...spec, width: 'container' } : spec) as unknown as VisualizationSpec, {
    mode: 'vega-lite',
    renderer: 'svg',
    config: vegaConfig('page'),
    actions: false,
    logLevel: 1, // errors alone
    ast: true,
    expr: expressionInterpreter,
    defaultStyle: false,
    tooltip: { disableDefaultStyle: true },
  })
  if (order !== drawing.order) {
    result.finalize()
    return
  }
  drawing.result?.finalize()
  drawing.result = result
  place.style.removeProperty('min-height')
}
