import { inflateRawSync } from 'node:zlib'
import { expect, test } from 'vitest'
import { cells } from '../../../../tests/helpers/pageCells.ts'
import { pageData } from '../page/pageData.ts'
import { writePage } from './writePage.ts'

test('one file that carries its script, its style and its data', async () => {
  const html = await writePage(
    { question: 'How many?', scenarioName: 'Line', date: new Date(0), command: 'loopwright sweep a.yaml' },
    cells,
  )
  const markup = html.replace(/<script>[\s\S]*?<\/script>/, '').replace(/<style>[\s\S]*?<\/style>/, '')
  expect(/<(link|iframe|object|embed)\b|<(script|img)[^>]* src="(?!data:)/.exec(markup)).toBeNull()
  const packed = /id="page-data">([^<]*)</.exec(html)![1]!
  expect(JSON.parse(inflateRawSync(Buffer.from(packed, 'base64')).toString())).toEqual(JSON.parse(JSON.stringify(pageData(cells))))
  expect(Buffer.byteLength(html)).toBeLessThan(1.5e6)
})
