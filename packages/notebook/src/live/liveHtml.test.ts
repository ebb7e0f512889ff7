import { expect, test } from 'vitest'
import { NASTY } from '../../../../tests/helpers/pageCells.ts'
import { SMALL_LINE } from '../../../../tests/helpers/scenarioTexts.ts'
import { liveCell } from './liveCell.ts'
import { liveHtml } from './liveHtml.ts'

const cell = liveCell({ scenarioFile: 'a.yaml', scenarioText: SMALL_LINE })!

test('each input has its row, with a name, its value and that of the file', () => {
  const html = liveHtml(cell)
  for (const { key, file } of cell.inputs) {
    const row = html.slice(html.indexOf(`data-key="${key}"`))
    const id = /<label for="([^"]*)"/.exec(row)![1]!
    expect(html).toContain(`id="${id}"`)
    expect(row.slice(0, row.indexOf('</div>'))).toContain(`file: ${file}`)
  }
})

test('texts of the scenario stand as text', () => {
  const [input] = cell.inputs
  const html = liveHtml({ ...cell, inputs: [{ ...input!, key: NASTY, label: NASTY, file: NASTY }] })
  expect(html).not.toContain('<b>')
  expect(html.match(/&lt;b&gt;/g)!.length).toBeGreaterThanOrEqual(5)
})
