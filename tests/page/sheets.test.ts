import { pathToFileURL } from 'node:url'
import { join } from 'node:path'
import { writeFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { inChromium } from './inChromium.ts'
import { canReadSheets, sheetFaults } from './sheets.ts'

const PAGE = (body: string): string =>
  `<!doctype html><meta charset="utf-8"><style>@page{margin:16mm}th{vertical-align:bottom}h2,p,table,div{margin:0;font:16px/20px sans-serif}.block{height:500px}.new{break-before:page}</style>${body}`

/** pixels high: it all but fills a sheet of A4, which has 1001 between its margins */
const full = (text: string): string => `<div style="height:900px">${text}</div>`

inChromium('what is wrong with sheets', (given) => {
  // skipped because no poppler-utils are here and none can be installed; with CI=true that is an error instead
  test.skipIf(!canReadSheets())(
    'a half-empty sheet, heads that stand alone, a footer that stands alone, a hand-out that is not on the first one',
    async () => {
      const file = join(given.folder, 'page.html')
      const page = await given.browser.newPage()
      const faults = async (body: string): Promise<string[]> => {
        writeFileSync(file, PAGE(body))
        await page.goto(pathToFileURL(file).href)
        return await sheetFaults(page, given.folder, 'A4')
      }
      const sheet = `<div class="new">${full('')}<p>the last line</p></div>`
      expect(await faults(`${sheet}${sheet}${sheet}`)).toEqual([])
      expect(await faults(`${sheet}<p class="new">little</p>${sheet}`)).toEqual(['sheet 2 of 3 is 1 % full'])
      expect(await faults(`${sheet}${sheet}<p class="new">Repeat with</p>`)).toEqual(['sheet 3 of 3 is 1 % full'])
      expect(await faults(`${full('')}<h2>What limits the line</h2>${sheet}`)).toEqual([
        'sheet 1 of 2 ends with a head that has nothing below it: “What limits the line”',
      ])
      const head = '<table><thead><tr><th>Zone<th>With a<br>carrier</tr></thead></table>'
      expect(await faults(`${full('')}${head}${sheet}`)).toEqual([
        'sheet 1 of 2 ends with a head that has nothing below it: “Zone carrier”',
      ])
      expect(await faults(`${sheet}<div class="new handout">What it rests on</div>${full('')}<p>the last line</p>`)).toEqual([
        'the first sheet does not say what the answer rests on',
      ])
      await page.close()
    },
  )
})
