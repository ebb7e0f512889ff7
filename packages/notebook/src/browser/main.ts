/** The page's script: draws the pictures, switches views together, opens the tables for print. */
import type { PageData } from '../page/pageData.ts'
import { onChoice } from './choice.ts'
import { drawAll, showView } from './figures.ts'
import { preparePrint } from './print.ts'

document.documentElement.classList.add('script')
const data = JSON.parse(document.getElementById('page-data')?.textContent ?? '{"figures":{},"tables":{}}') as PageData

onChoice((choice, key) => showView(data, choice, key))
preparePrint()
void drawAll(data)
