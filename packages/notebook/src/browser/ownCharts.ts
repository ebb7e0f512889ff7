/** The script of a page with charts of one's own. */
import { draw, setWidth } from './draw.ts'
import { start } from './start.ts'
import { showStills } from './stills.ts'

start(draw, setWidth).catch(showStills)
