// A drawing as text
export { drawingSvg } from '../drawing/drawingSvg.ts'
export type { DrawingOptions } from '../drawing/drawingSvg.ts'

// The look
export { STATE_LOOKS, STATES } from './states.ts'
export type { StateLook } from './states.ts'
export { themeCss, vegaConfig } from './theme.ts'
export type { Look } from './theme.ts'
export { hatchings } from './hatching.ts'
