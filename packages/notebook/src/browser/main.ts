/** The page's script: draws the pictures, switches views together, opens the tables for print. */
import { onChoice } from './choice.ts'
import { drawAll, showView } from './figures.ts'
import { preparePrint } from './print.ts'
import { readData } from './readData.ts'
import { showStills } from './stills.ts'

async function start(): Promise<void> {
  const data = await readData()
  document.documentElement.classList.add('script')
  onChoice((choice, key) => showView(data, choice, key))
  preparePrint()
  await drawAll(data)
}

start().catch(showStills)
