/** The script of a page whose pictures are all our own. */
import { start } from './start.ts'
import { showStills } from './stills.ts'

start(
  () => Promise.resolve(),
  () => {},
).catch(showStills)
