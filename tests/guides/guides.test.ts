/** The guides show what the program prints and draws today; `DOCS=write npx vitest run tests/guides` writes them anew. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { expect, test } from 'vitest'
import { main } from '../../packages/cli/src/main.ts'
import { keptRuns } from '../helpers/keptRuns.ts'
import { memoryShell } from '../helpers/memoryShell.ts'
import { SMALL_LINE } from '../helpers/scenarioTexts.ts'
import { TOP } from '../tidy/sources.ts'
import { commandsIn, writtenAnew } from './guide.ts'
import { folderPlace, memoryPlace } from './places.ts'

const GUIDES = join(TOP, 'packages/cli/guides')
const names = readdirSync(GUIDES)
  .filter((file) => file.endsWith('.md'))
  .map((file) => basename(file, '.md'))
const read = (name: string): string => readFileSync(join(GUIDES, `${name}.md`), 'utf8')
/** lines of a guide with all that is printed: more is no page */
const LINES_MAX = 200
/** bytes of a picture: a document is read over slow lines too */
const PICTURE_MAX = 40_000

// those that tell of stores are typed

test.each(names)('%s shows what is printed and drawn', { tags: 'long' }, async (name) => {
  const place = read(name).includes('--store') ? folderPlace() : memoryPlace(keptRuns())
  try {
    const { text, pictures } = await writtenAnew(read(name), name, place)
    const file = (picture: string): string => join(GUIDES, 'pictures', `${picture}.svg`)
    if (process.env.DOCS === 'write') {
      writeFileSync(join(GUIDES, `${name}.md`), text)
      for (const [picture, svg] of pictures) writeFileSync(file(picture), svg)
    }
    expect(text).toBe(read(name))
    for (const [picture, svg] of pictures) {
      expect(readFileSync(file(picture), 'utf8') === svg, `pictures/${picture}.svg is drawn otherwise today`).toBe(true)
      expect(svg.length, picture).toBeLessThan(PICTURE_MAX)
    }
  } finally {
    place.leave()
  }
})

test('a guide is typed as well as carried out here', () => {
  expect(names.filter((name) => read(name).includes('--store'))).toEqual(['many-machines'])
})

test('each guide is a page with a picture, and each picture belongs to one', () => {
  const shown = names.flatMap((name) => [...read(name).matchAll(/\(pictures\/([\w-]+\.svg)\)/g)].map(([, file]) => file!))
  expect(readdirSync(join(GUIDES, 'pictures')).toSorted()).toEqual(shown.toSorted())
  for (const name of names) {
    expect(
      shown.some((file) => file.startsWith(`${name}-`)),
      name,
    ).toBe(true)
    expect(read(name).split('\n').length, name).toBeLessThanOrEqual(LINES_MAX)
    expect(read(name).startsWith('# '), name).toBe(true)
  }
})

test('README, the page of the command and the pages of reference lead to each guide', () => {
  const { typedocOptions } = JSON.parse(readFileSync(join(TOP, 'package.json'), 'utf8')) as {
    typedocOptions: { projectDocuments: string[] }
  }
  expect(typedocOptions.projectDocuments).toContain('packages/cli/guides/*.md')
  const [readme, command] = ['README.md', 'packages/cli/README.md'].map((file) => readFileSync(join(TOP, file), 'utf8'))
  for (const name of names) {
    expect(readme).toContain(`(packages/cli/guides/${name}.md)`)
    expect(command).toContain(`(guides/${name}.md)`)
  }
  expect(existsSync(GUIDES)).toBe(true)
})

test('what the guide of the page calls by its name stands in a page', async () => {
  const shell = memoryShell({ 'line.yaml': SMALL_LINE })
  expect(await main(['sweep', 'line.yaml', '--carriers', '2..3', '--replications', '2', '--out', 'page.html'], shell)).toBe(0)
  const named = [...read('in-the-page').matchAll(/^\| .*? \|/gm)].flatMap(([cell]) =>
    [...cell.matchAll(/\*\*(.+?)\*\*/g)].map(([, name]) => name!),
  )
  expect(named.length).toBeGreaterThan(5)
  expect(named.filter((name) => !new RegExp(`>${name}[ <]`).test(shell.files.get('page.html')!))).toEqual([])
})

test('commands are cut as a shell cuts them', () => {
  expect(commandsIn(['npx loopwright order a.yaml \\', '  --set "drive.speed=9 m/min"  # slower', '', '# nothing'])).toEqual([
    ['npx', 'loopwright', 'order', 'a.yaml', '--set', 'drive.speed=9 m/min'],
  ])
})
