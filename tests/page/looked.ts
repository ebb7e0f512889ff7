/** What is read off a page in a browser. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { STATION_STATES } from '@loopwright/line'
import type { SweepCount } from '@loopwright/study'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { shownNumber } from './shown.ts'

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** Where to look, and by which rules, as axe-core takes it. */
export interface AxeLook {
  /** selector of the part that is looked at. Default: the whole page */
  readonly part?: string
  readonly runOnly?: readonly string[]
  readonly rules?: Readonly<Record<string, { readonly enabled: boolean }>>
  readonly iframes?: boolean
}

/**
 * Faults that axe-core knows, each with where it is. What the page lets in does not matter: the script comes by the browser's own hand. Only of faults is it
 * asked where they are, since to find a name for each place without one takes longer than to look at it.
 */
export async function axeFaults(page: Page, { part, ...look }: AxeLook = {}): Promise<string[]> {
  await page.evaluate(AXE)
  const words = JSON.stringify({ ...look, resultTypes: ['violations'] })
  const violations = await page.evaluate<Violation[]>(
    `axe.run(${part === undefined ? 'document' : JSON.stringify(part)}, ${words}).then((found) => found.violations)`,
  )
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`)
}

interface Violation {
  readonly id: string
  readonly nodes: readonly { readonly html: string }[]
}

/** Heads, then rows, of the table in a figure; text as people see it. */
export async function tableOf(page: Page, holder: string): Promise<string[][]> {
  // one question to the browser, not one for each row
  const rows = await page.evaluate<string[][]>(
    `[...document.querySelectorAll(${JSON.stringify(`${holder} table tr`)})].map((row) => [...row.querySelectorAll('th, td')].map((cell) => cell.innerText))`,
  )
  return rows.map((row) => row.map((text) => text.replaceAll('\u00ad', '').replace(/\s+/g, ' ').trim()))
}

export async function openTables(page: Page): Promise<void> {
  await page.evaluate("for (const details of document.querySelectorAll('details')) details.open = true")
}

export async function holdsStations(page: Page, count: SweepCount): Promise<void> {
  const [heads, ...rows] = await tableOf(page, '#stations')
  expect(rows.length).toBe(count.stations.length)
  let told = 0
  for (const [index, station] of count.stations.entries()) {
    for (const state of STATION_STATES) {
      const column = heads!.findIndex((head) => head.replace(/^waits/, 'waiting').startsWith(state))
      if (column < 0) expect(station.shares[state], `${station.name} ${state} has a share and no column`).toBe(0)
      else {
        expect(rows[index]![column], `${count.carriers} carriers, ${station.name}, ${state}`).toSatisfy(
          shownNumber(station.shares[state] * 100),
        )
        told += 1
      }
    }
  }
  expect(told).toBeGreaterThanOrEqual(count.stations.length * 4)
}

export async function holdsZones(page: Page, count: SweepCount): Promise<void> {
  const [, ...rows] = await tableOf(page, '#plan')
  expect(rows.map((cells) => cells[0])).toEqual(count.zones.map(({ name }) => name))
  for (const [index, zone] of count.zones.entries()) expect(rows[index]!.at(-1)).toSatisfy(shownNumber(zone.occupancyMean * 100))
}
