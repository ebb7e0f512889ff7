import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, posix } from 'node:path'
import { pathToFileURL } from 'node:url'
import { readScenario } from '@loopwright/scenario'
import { describe, expect, test } from 'vitest'
import { EXAMPLES } from '../packages/cli/src/options/examples.ts'
import { main } from '../packages/cli/src/main.ts'
import { decisionOf } from './helpers/decisionText.ts'
import { keptRuns } from './helpers/keptRuns.ts'
import { memoryShell } from './helpers/memoryShell.ts'
import { SHOP_BYTES, SHOP_FILES } from './helpers/shopTables.ts'
import { commandFaults, commandsOf } from './docs/commands.ts'
import { agree, blockFaults, examplesOf, hiddenNames, runExample } from './docs/examples.ts'
import { EXECUTED, scopeOf } from './docs/given.ts'
import { anchorsOf, blocksOf, linksOf } from './docs/markdown.ts'
import { pageOf, shortDemo } from './docs/programs.ts'
import { tableFaults } from './docs/tables.ts'
import { filesUnder, TOP } from './tidy/sources.ts'

const documents = filesUnder('.', /\.md$/)
const code = filesUnder('packages', /\.ts$/).filter((source) => !source.file.endsWith('.test.ts'))
const bin = join(TOP, 'packages/cli/bin/loopwright.js')

/** packages whose examples simulate */
const LONG = ['study', 'measure', 'decide', 'notebook']

describe.each(EXECUTED)('examples of %s', (name) => {
  const examples = code.filter((source) => source.file.startsWith(`packages/${name}/src/`)).flatMap(examplesOf)

  test('give what they say', { tags: LONG.includes(name) ? 'long' : [] }, async () => {
    const scope = await scopeOf(name)
    const wrong: string[] = []
    for (const example of examples) {
      const own = (await import(pathToFileURL(join(TOP, example.file)).href)) as Record<string, unknown>
      const at = `${example.file}:${example.line}: ${example.expression}`
      wrong.push(...hiddenNames(example, scope, own).map((hidden) => `${at} names ${hidden}, which no door gives`))
      if (example.expected === '') wrong.push(`${at} says nothing behind // =>`)
      else {
        try {
          const { is, shouldBe } = await runExample(example, { ...scope, ...own })
          if (!agree(is, shouldBe)) wrong.push(`${at} gives ${JSON.stringify(is)}, not ${example.expected}`)
        } catch (error) {
          wrong.push(`${at} throws ${String(error)}`)
        }
      }
    }
    expect(wrong).toEqual([])
    expect(examples.length).toBeGreaterThan(0)
  })
})

describe('documents', () => {
  test('links lead somewhere', () => {
    const broken = documents.flatMap((source) =>
      linksOf(source).flatMap(({ line, target }) => {
        if (/^https?:/.test(target)) return []
        const [path = '', anchor] = target.split('#')
        const file = path === '' ? source.file : posix.join(posix.dirname(source.file), path)
        const text = existsSync(join(TOP, file)) ? (anchor === undefined ? '' : readFileSync(join(TOP, file), 'utf8')) : null
        const there = text !== null && (anchor === undefined || anchorsOf({ file, text }).includes(anchor))
        return there ? [] : [`${source.file}:${line}: ${target} leads nowhere`]
      }),
    )
    expect(broken).toEqual([])
  })

  test('files named in code style exist', () => {
    const gone = documents.flatMap((source) =>
      source.text.split('\n').flatMap((text, index) =>
        [...text.matchAll(/`((?:packages|tests|scenarios|notebooks|\.ci)\/[\w./-]+)`/g)]
          .map((found) => found[1]!)
          .filter((file) => !existsSync(join(TOP, file)))
          .map((file) => `${source.file}:${index + 1}: there is no ${file}`),
      ),
    )
    expect(gone).toEqual([])
  })

  test('each room of a package stands in its README, and no other', () => {
    const findings = readdirSync(join(TOP, 'packages'), { withFileTypes: true }).flatMap((entry) => {
      if (!entry.isDirectory()) return []
      const folder = join(TOP, 'packages', entry.name)
      const rooms = readdirSync(join(folder, 'src'), { recursive: true, withFileTypes: true }).flatMap((room) =>
        room.isDirectory() ? [`${posix.relative(join(folder, 'src'), posix.join(room.parentPath, room.name))}/`] : [],
      )
      const text = readFileSync(join(folder, 'README.md'), 'utf8')
      const told = [...text.matchAll(/`(?:src\/)?([a-z]\w*(?:\/\w+)?\/)`/g)].map((found) => found[1]!)
      const gone = [...text.matchAll(/`((?:src\/)?[a-z]\w*\/[\w/]+\.ts)`/g)]
        .map((found) => found[1]!.replace(/^src\//, ''))
        .filter((file) => !/^(packages|tests|notebooks)\//.test(file) && !existsSync(join(folder, 'src', file)))
      return [
        ...rooms.filter((room) => !told.includes(room)).map((room) => `packages/${entry.name}/README.md: does not say what ${room} holds`),
        ...told.filter((room) => !rooms.includes(room)).map((room) => `packages/${entry.name}/README.md: there is no ${room}`),
        ...gone.map((file) => `packages/${entry.name}/README.md: there is no src/${file}`),
      ]
    })
    expect(findings).toEqual([])
  })

  test('sections of MODEL.md that code cites are there', () => {
    const model = readFileSync(join(TOP, 'packages/line/MODEL.md'), 'utf8')
    const sections = [...model.matchAll(/^## (\d+)\. /gm)].map((found) => found[1]!)
    expect(sections).toEqual(['1', '2', '3', '4', '5', '6', '7', '8', '9', '10', '11', '12'])
    const cited = [...code, ...documents].flatMap((source) => [...source.text.matchAll(/MODEL\.md §(\d+)/g)].map((found) => found[1]!))
    expect(cited.length).toBeGreaterThan(5)
    expect(cited.filter((number) => !sections.includes(number))).toEqual([])
  })

  test('worked timelines are numbered without a gap', () => {
    const model = readFileSync(join(TOP, 'packages/line/MODEL.md'), 'utf8')
    const numbers = [...model.matchAll(/^\*\*T(\d+) · /gm)].map((found) => Number(found[1]))
    expect(numbers.length).toBeGreaterThanOrEqual(10)
    expect(numbers).toEqual(numbers.map((_, i) => i + 1))
  })

  test('blocks of code give what they say', async () => {
    const blocks = documents.flatMap(blocksOf).filter((block) => block.language === 'ts' && block.text.includes('// =>'))
    const load = (name: string) => import(name)
    for (const block of blocks) expect([block.file, ...(await blockFaults(block.text, load))]).toEqual([block.file])
    expect(blocks.length).toBeGreaterThan(3)
  })

  test('programs of notebooks run, and show cells that there are', { tags: 'long' }, async () => {
    const blocks = documents.flatMap(blocksOf).filter((block) => block.language === 'ts' && block.text.includes('export default notebook('))
    for (const block of blocks)
      expect([block.file, await pageOf(block.text)]).toEqual([block.file, expect.stringMatching(/^<!doctype html>/)])
    expect(blocks.length).toBeGreaterThan(0)
  })

  test('every dependency has its reason in packages/README.md, and no other is there', () => {
    const text = readFileSync(join(TOP, 'packages', 'README.md'), 'utf8')
    const rows = text
      .slice(text.indexOf('## Dependencies'), text.indexOf('Written here although'))
      .split('\n')
      .filter((row) => row.startsWith('| '))
    const told = rows
      .slice(1)
      .flatMap((row) =>
        row
          .split('|')[2]!
          .replaceAll(/\([^)]*\)/g, '')
          .split(','),
      )
      .map((name) => name.trim())
      .filter((name) => /^[@a-z]/.test(name))
    const manifests = filesUnder('.', /^package\.json$/).map(
      (source) => JSON.parse(source.text) as Record<string, Record<string, string> | undefined>,
    )
    const used = manifests.flatMap((one) =>
      [one.dependencies, one.devDependencies, one.optionalDependencies, one.peerDependencies].flatMap((list) => Object.keys(list ?? {})),
    )
    expect([...new Set(told)].sort()).toEqual([...new Set(used.filter((name) => !name.startsWith('@loopwright/')))].sort())
  })

  test('README fits on a hundred lines', () => {
    expect(readFileSync(join(TOP, 'README.md'), 'utf8').split('\n').length).toBeLessThanOrEqual(101)
  })
})

describe('what documents tell people to type', () => {
  const commands = documents.flatMap(blocksOf).flatMap(commandsOf)
  test('is there: every command, script and option', async () => {
    const { scripts } = JSON.parse(readFileSync(join(TOP, 'package.json'), 'utf8')) as { scripts: Record<string, string> }
    const whole = await helpOf('')
    const names = new Set(commands.map((command) => command.words[2] ?? '').filter((name) => new RegExp(`^ +${name} `, 'm').test(whole)))
    const helps = new Map([['', whole]])
    for (const name of names) if (/^[a-z]/.test(name)) helps.set(name, await helpOf(name))
    expect(commands.flatMap((command) => commandFaults(command, Object.keys(scripts), (name) => helps.get(name) ?? ''))).toEqual([])
    expect(commands.filter((command) => command.words[1] === 'loopwright').length).toBeGreaterThan(4)
  })

  test('scenarios are read without a problem', () => {
    const scenarios = documents.flatMap(blocksOf).filter((block) => block.language === 'yaml' && block.text.startsWith('format: 1'))
    const problems = scenarios.flatMap((block) =>
      readScenario(block.text).problems.map((problem) => `${block.file}:${block.line - 1 + problem.line}: ${problem.message}`),
    )
    expect(problems).toEqual([])
    expect(scenarios.length).toBeGreaterThan(0)
  })
})

async function helpOf(subcommand: string): Promise<string> {
  const shell = memoryShell()
  expect(await main(subcommand === '' ? ['--help'] : [subcommand, '--help'], shell)).toBe(0)
  return shell.said.out
}

describe('examples of the help, on the demo line with short shifts, with few runs', { tags: 'long' }, () => {
  const demo = shortDemo()
  const files = {
    'line.yaml': demo,
    'today.yaml': demo,
    'proposal.yaml': demo.replace('name: ', 'name: Proposal, '),
    'line.decision.yaml': decisionOf('line.yaml'),
    'weeks.csv': 'week,units,shifts\nW1,60,2\nW2,60,2\n',
    'tasks.csv': 'task,seconds,after\nfit,40,\ntest,30,fit\n',
    ...SHOP_FILES,
  }
  const of = (names: string, replications: number) =>
    Object.fromEntries(names.split(' ').map((name) => [name, ['--replications', `${replications}`]]))
  const FEW: Readonly<Record<string, readonly string[]>> = {
    ...of('compare grid drivers losses payback screen criteria assemble', 2),
    ...of('forecast', 5),
    ...of('promise followup', 12),
    ...of('acceptance trial', 40),
    sweep: ['--carriers', '9..10', '--replications', '2'],
    order: ['--check-replications', '2'],
  }
  // the words of all are held by packages/cli/src/options/examples.test.ts; those left out here take many runs whatever is asked for, or files or a server of their own
  const LONG = ['', 'notebook', 'steady', 'carriers', 'order line.yaml --move S4,S5,S6', 'store merge', 'work', 'queue']
  const lines = Object.entries(EXAMPLES).flatMap(([name, all]) =>
    LONG.includes(name) ? [] : all.slice(0, 2).filter((line) => !LONG.some((long) => long !== '' && line.startsWith(long))),
  )

  test.each(lines)('loopwright %s', async (line) => {
    const plain = line.replace(/ > .*$/, '').replace(/ --out \S+\.html/, '')
    const words = [...plain.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, word]) => quoted ?? word!)
    const shell = memoryShell(files, { bytes: SHOP_BYTES, store: keptRuns() })
    // with --csv a trace tells its picture in place of its events
    const tables = words[0] !== 'trace' && (await helpOf(words[0]!)).includes('--csv') ? ['--csv', 'tables'] : []
    const code = await main([...words, ...(FEW[words[0]!] ?? []), ...tables], shell)
    expect([code, code === 0 ? '' : shell.said.err]).toEqual([0, ''])
    expect(shell.said.out).toMatch(/\S/)
    const written = new Map([...shell.files].flatMap(([path, text]) => (path.startsWith('tables/') ? [[path.slice(7), text]] : [])))
    expect(written.size > 0).toBe(tables.length > 0)
    expect(tableFaults(written, readFileSync(join(TOP, 'packages/cli/README.md'), 'utf8'))).toEqual([])
  })
})

/** `DOCS=write npx vitest run tests/docs.test.ts` puts what is printed today into README. */
describe('the run that README shows', { tags: 'long' }, () => {
  test('prints what it shows', () => {
    const blocks = documents.filter((source) => source.file === 'README.md').flatMap(blocksOf)
    const shown = blocks.findIndex((block) => block.language === 'text')
    const scenario = blocks.findLast((block, index) => index < shown && block.language === 'yaml')
    const [command] = commandsOf(blocks[shown - 1]!)
    const folder = mkdtempSync(join(tmpdir(), 'loopwright-'))
    try {
      writeFileSync(join(folder, 'my-loop.yaml'), scenario!.text)
      const run = spawnSync(process.execPath, [bin, ...command!.words.slice(2)], {
        encoding: 'utf8',
        cwd: folder,
        env: { ...process.env, NO_COLOR: '1' },
      })
      const said = run.stdout.replaceAll(/ +$/gm, '').trim()
      const readme = join(TOP, 'README.md')
      if (process.env.DOCS === 'write')
        writeFileSync(
          readme,
          readFileSync(readme, 'utf8').replace(blocks[shown]!.text, () => said),
        )
      else expect(said).toBe(blocks[shown]!.text)
    } finally {
      rmSync(folder, { recursive: true })
    }
  })
})

describe('the checks find what they are for', () => {
  test('a wrong example', async () => {
    const [right, wrong, mute] = examplesOf({
      file: 'a.ts',
      text: '/** @example f(2) // => 4 */\n/** @example f(2) // => 5 */\n/** @example f(2) */',
    })
    const scope = { f: (x: number) => x * x }
    const ok = async (example: typeof right) => agree(...(Object.values(await runExample(example!, scope)) as [unknown, unknown]))
    expect([await ok(right), await ok(wrong), mute?.expected]).toEqual([true, false, ''])
    expect(agree({ a: [1, 2] }, { a: [1, 2.000000000001] })).toBe(false)
    expect([agree('83\u202f%', '83 %'), agree('83 %', '84 %')]).toEqual([true, false])
    expect(agree(new Float64Array([1, 2]), [1, 2])).toBe(true)
    expect(agree(undefined, null)).toBe(false)
  })

  test('a wrong block', async () => {
    const load = async () => ({ f: (x: number) => x * x })
    expect(await blockFaults("import { f } from 'x'\nconst a = f(2)\na // => 4\na + 1 // => 6", load)).toEqual(['a + 1 // => 6 gives 5'])
    expect(await blockFaults("import { f, g } from 'x'\nf(2) // => 5", load)).toEqual(['x has no g'])
  })

  test('a command that is not there', () => {
    const help = (subcommand: string) => (subcommand === '' ? 'Commands:\n  run FILE  run it\n' : 'Options:\n  -h, --help\n  --seed TEXT\n')
    const [block] = blocksOf({
      file: 'a.md',
      text: '```sh\nnpm test && npm run nothing\nnpx loopwright run a.yaml --seed 3 \\\n  --sed 4  # --never\nnpx loopwright walk\n```',
    })
    expect(commandsOf(block!).flatMap((command) => commandFaults(command, ['test'], help))).toEqual([
      'a.md:2: there is no script "nothing"',
      'a.md:4: "run" has no option --sed',
      'a.md:5: there is no command "walk"',
    ])
  })

  test('links and anchors', () => {
    const source = { file: 'a.md', text: '# One · two\n[x](b.md#c) and `[y](z)`\n```\n[z](z)\n```' }
    expect(linksOf(source)).toEqual([{ line: 2, target: 'b.md#c' }])
    expect(anchorsOf(source)).toEqual(['one--two'])
  })
})
