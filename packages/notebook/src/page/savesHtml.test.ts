import { expect, test } from 'vitest'
import { cellHtml } from './cellHtml.ts'
import { leadFigureHtml } from './figureHtml.ts'
import { markdownWriter } from './markdown.ts'
import { chartCell, planCell } from '../../../../tests/helpers/pageCells.ts'
import { answerSavesHtml, figureSavesHtml } from './savesHtml.ts'

const kinds = (html: string): string[] => [...html.matchAll(/data-as="(\w+)"/g)].map(([, as]) => as!)

test('a figure as picture, as points, as numbers and as a sentence; the answer as a sentence', () => {
  expect(kinds(figureSavesHtml())).toEqual(['svg', 'png', 'csv', 'finding'])
  expect(kinds(answerSavesHtml())).toEqual(['answer'])
})

test('what a button is called holds what stands on it', () => {
  for (const [, name, label] of `${figureSavesHtml()}${answerSavesHtml()}`.matchAll(/aria-label="([^"]+)">([^<]+)</g))
    expect(name).toContain(label)
})

test('they stand with every figure, with the one beside the answer too, and with the answer', () => {
  const html = (cell: Parameters<typeof cellHtml>[0]): string => cellHtml(cell, markdownWriter(), new Map())
  for (const text of [html(chartCell), html(planCell), leadFigureHtml(chartCell, null)])
    expect(kinds(text)).toEqual(kinds(figureSavesHtml()))
  expect(kinds(html({ kind: 'answer', id: 'a', sentences: ['So.'] }))).toEqual(['answer'])
})
