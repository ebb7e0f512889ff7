/** Cells that the tests of the page set, and what is expected of any text in them. */
import type { PlanZone } from '@loopwright/charts'
import { type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import { type Cell, type ChartCell, oneView, type PlanCell, tableCell } from '../../packages/notebook/src/cells/cell.ts'
import type { Figure } from '../../packages/notebook/src/cells/figure.ts'

export const NASTY = '<b>"S&P"</b>'

export function table(mark: string): Table {
  return tableOf<{ readonly name: string; readonly share: string }>({
    caption: `Table ${mark}`,
    columns: [
      wordColumn('Station', 'station', 'name of the station', ({ name }) => name),
      { head: 'Share,\n%', text: ({ share }) => share, data: [['share', '0 … 100', ({ share }) => Number(share)]] },
    ],
    rows: [
      { name: NASTY, share: mark },
      { name: 'S2', share: '7' },
    ],
    marked: (_, index) => index === 1,
    note: 'Note',
  })
}

export function chart(mark: string): Figure {
  return {
    finding: `Finding ${mark}`,
    picture: {
      kind: 'drawing',
      drawing: {
        heightPixels: 40,
        across: { from: 0, to: 10, title: 'Share, %' },
        up: { from: 1, to: 0, title: '', ticks: [] },
        marks: [{ mark: 'area', x: [0, Number(mark)], y: [0, 1], ink: 'bar', tip: NASTY }],
      },
    },
    alt: `Alternative ${mark}`,
    howToRead: `Read ${mark}`,
    table: table(mark),
    tableOpen: false,
  }
}

/** A chart of one's own. */
export const ownCell: ChartCell = {
  kind: 'chart',
  id: 'own',
  views: oneView({ ...chart('3'), picture: { kind: 'chart', spec: { data: { values: [{ share: 3 }] }, mark: 'bar' } } }),
}

export const zones: PlanZone[] = Array.from({ length: 8 }, (_, index) => ({
  name: `Z0${index + 1}`,
  lengthMetres: 1,
  turn: index % 2 === 1 ? 'right' : null,
  transfer: index % 2 === 1,
  station: index === 0 ? { title: NASTY, duties: ['load', 'unload'] } : null,
  value: index / 8,
  label: String(index),
}))

export const chartCell: ChartCell = {
  kind: 'chart',
  id: 'stations',
  views: { choice: 'carriers', shown: '6', of: ['5', '6'].map((key) => ({ key, content: chart(key) })) },
}

export const planCell: PlanCell = {
  kind: 'plan',
  id: 'plan',
  views: {
    choice: 'carriers',
    shown: '6',
    of: ['5', '6'].map((key) => ({
      key,
      content: { ...chart(key), picture: { kind: 'plan', zones, paths: null, valueMeaning: 'share of the shift, %' } },
    })),
  },
}

const provenance = { scenarioFile: 'a.yaml', scenarioHash: 'abc', seed: '7', replications: 30, engineVersion: '0.1.0', partial: false }

export const cells: readonly Cell[] = [
  { kind: 'sweep', id: 'sweep', sentence: 'Simulated: 30 runs.', provenance },
  { kind: 'answer', id: 'answer', sentences: [`First ${NASTY}`, 'Second'] },
  { kind: 'prose', id: 'prose-1', markdown: '## Counts\nText' },
  {
    kind: 'choice',
    id: 'carriers',
    legend: 'Carriers',
    options: [
      { key: '5', label: '5' },
      { key: '6', label: '6' },
    ],
    shown: '6',
  },
  chartCell,
  planCell,
  { kind: 'table', id: 'by-count', views: { choice: 'carriers', shown: '6', of: [{ key: '6', content: table('6') }] } },
  { kind: 'sure', id: 'sure', sentences: ['Sure'] },
  { ...tableCell('details', table('8')), pageOnly: true },
  { kind: 'data', id: 'replications', table: { ...table('9'), caption: 'only in files' } },
  { kind: 'caution', id: 'use', tone: 'caution', title: 'Use', markdown: 'Local codes decide.' },
]
