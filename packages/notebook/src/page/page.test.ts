import { expect, test } from 'vitest'
import type { Cell } from '../cells/cell.ts'
import { cells, NASTY } from '../../../../tests/helpers/pageCells.ts'
import { terminalText } from '../terminal/terminal.ts'
import { pageHtml } from './page.ts'

const head = {
  question: `How many ${NASTY}?`,
  scenarioName: 'Line',
  date: new Date('2030-02-03T10:00:00Z'),
  command: 'loopwright sweep a.yaml',
}
const assets = {
  script: 'go()',
  scriptHash: 'sha256-script',
  early: 'first()',
  earlyHash: 'sha256-early',
  style: 'p{}',
  styleHash: 'sha256-style',
  engine: null,
  hash: (text: string) => `sha256-own-${text.length}`,
  pack: (text: string) => `packed ${text.length}`,
}
const html = pageHtml(head, cells, assets, new Map())

test('the page allows its own script and style and nothing else', () => {
  const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)![1]
  const own = /<\/style>\s*<style>([^<]*)<\/style>/.exec(html)![1]!
  expect(policy).toBe(
    `default-src 'none'; script-src 'sha256-early' 'sha256-script'; style-src 'sha256-style' 'sha256-own-${own.length}'; img-src data:; base-uri 'none'; form-action 'none'`,
  )
  expect(html).not.toMatch(/ style="| on\w+="|<link|https?:\/\/(?!www\.w3\.org)/)
})

test('headings are in order: one of level 1, none skipped', () => {
  const levels = [...html.matchAll(/<h([1-6])/g)].map((found) => Number(found[1]))
  expect(levels[0]).toBe(1)
  expect(levels.filter((level) => level === 1)).toHaveLength(1)
  expect(levels.every((level, index) => index === 0 || level <= levels[index - 1]! + 1)).toBe(true)
})

test('the answer stands first in the main part; the footer says how to get it again', () => {
  expect(html).toMatch(/<main id="main">\s*<section class="answer alone" id="answer" aria-label="Answer">/)
  const footer = html.slice(html.indexOf('<footer>'), html.indexOf('</footer>'))
  for (const part of ['a.yaml', 'abc', '7', 'Simulated: 30 runs', 'loopwright 0.1.0', 'loopwright sweep a.yaml'])
    expect(footer).toContain(part)
})

test('a choice is a group of radio buttons with a legend', () => {
  expect(html).toContain('<fieldset class="choice" id="carriers" data-choice="carriers"><legend>Carriers</legend>')
  expect(html).toContain('<input type="radio" name="carriers" value="6" checked>')
})

test('one option is no choice', () => {
  const choice = { kind: 'choice', id: 'carriers', legend: 'Carriers', options: [{ key: '5', label: '5' }], shown: '5' } as const
  expect(pageHtml(head, [choice], assets, new Map())).not.toContain('<fieldset')
})

test('how sure stands apart from the answer, where its cell stands', () => {
  expect(html.indexOf('<p class="sure">Sure</p>')).toBeGreaterThan(html.indexOf('id="by-count"'))
  expect(html).toContain('<div class="howsure" role="group" id="sure" aria-label="How sure">')
})

test('what is to be typed is code on the page, and stands bare in a terminal', () => {
  const sentences = ['Run `loopwright drivers` <first>.']
  const of = (cell: Cell): string => pageHtml(head, [cell], assets, new Map())
  const answer = { kind: 'answer', id: 'a', sentences } as const
  expect(of(answer)).toContain('<p class="first">Run <code>loopwright drivers</code> &lt;first&gt;.</p>')
  expect(of({ kind: 'sure', id: 's', sentences })).toContain('<p class="sure">Run <code>loopwright drivers</code> &lt;first&gt;.</p>')
  expect(terminalText(answer)).toBe('Run loopwright drivers <first>.')
})

test('details stand on the page, numbers for files do not, and no text of a user is obeyed', () => {
  expect(html).toContain('id="details"')
  expect(html).not.toContain('only in files')
  expect(html).not.toContain(NASTY)
})

test('the same cells give the same page', () => {
  expect(pageHtml(head, cells, assets, new Map())).toBe(html)
  expect(html).toContain('<time datetime="2030-02-03">3 February 2030</time>')
})

test('of several studies the footer names each, and once what they have in common', () => {
  const provenance = { scenarioFile: 'a.yaml', scenarioHash: 'abc', seed: '7', replications: 30, engineVersion: '0.1.0', partial: false }
  const run = (id: string, sentence: string): Cell => ({ kind: 'run', id, sentence, provenance })
  const html = pageHtml(head, [run('a', 'Two lines: 30 replications each.'), run('b', 'Drivers.')], assets, new Map())
  const footer = html.slice(html.indexOf('<footer>'), html.indexOf('</footer>'))
  expect(footer.match(/<dt>\w+/g)).toEqual(['<dt>Simulated', '<dt>Seed', '<dt>Scenario', '<dt>Version', '<dt>Simulated', '<dt>Repeat'])
  expect(footer).toContain('<dd>Two lines: 30 replications each.</dd>')
})

test('each section has a link to itself, and what stands with the answer has its title', () => {
  const told: Cell[] = [
    { kind: 'answer', id: 'answer', sentences: ['So.'] },
    { kind: 'prose', id: 'promise', markdown: 'At least 3.', aside: 'What may be promised' },
    { kind: 'prose', id: 'why', markdown: `## ${NASTY}` },
  ]
  const page = pageHtml(head, told, assets, new Map())
  expect(page).toMatch(
    /<section id="promise" aria-label="What may be promised"><h2 class="aside">What may be promised<\/h2>\s*<p>At least 3\.<\/p>/,
  )
  expect(page).toContain('<a class="here" href="#why" aria-label="Link to “')
  expect(page).not.toContain(`“${NASTY}”`)
})
