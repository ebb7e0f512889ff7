import { onChoice } from './choice.ts'
import { type DrawOwn, drawAll, showView } from './figures.ts'
import { bringToLife } from './live/panel.ts'
import { preparePrint } from './print.ts'
import { readData } from './readData.ts'
import { offerSaves } from './save.ts'
import { watchScrollers } from './scrollers.ts'
import { showTips } from './tips.ts'

/**
 * Switches views together, says the values of marks, opens the tables for print, draws charts of one's own.
 *
 * @param setWidth  gives every chart of one's own this width, or with null that of its place
 */
export async function start(drawOwn: DrawOwn, setWidth: (pixels: number | null) => void): Promise<void> {
  const data = await readData()
  onChoice((choice, key) => showView(data, choice, key, drawOwn))
  showTips()
  offerSaves()
  watchScrollers()
  preparePrint(setWidth)
  if (data.live !== null) bringToLife(data.live)
  await drawAll(data, drawOwn)
}
