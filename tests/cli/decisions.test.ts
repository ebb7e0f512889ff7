/** The commands of decision files, as typed: told, as documents that are what their schemas say, and refused where something is missing. */
import { readFileSync } from 'node:fs'
import { workSeconds } from '@loopwright/notebook/decision'
import { readScenario } from '@loopwright/scenario'
import { describe, expect, test } from 'vitest'
import { main } from '../../packages/cli/src/main.ts'
import { keptRuns } from '../helpers/keptRuns.ts'
import { memoryShell } from '../helpers/memoryShell.ts'
import { schemaCheck } from '../helpers/schemaCheck.ts'

const FOLDER = 'scenarios/base-line-decision'
const DECISION = `${FOLDER}/base-line.decision.yaml`
const read = (path: string): string => readFileSync(path, 'utf8')
const files = (change: (text: string) => string = (text) => text): Record<string, string> => ({
  [DECISION]: change(read(DECISION)),
  [`${FOLDER}/push-line.yaml`]: read(`${FOLDER}/push-line.yaml`),
  [`${FOLDER}/guided-vehicles.yaml`]: read(`${FOLDER}/guided-vehicles.yaml`),
  'weeks.csv': WEEKS,
  'stations.csv': STATIONS,
  'scenarios/outdoor-unit-base-line.yaml': read('scenarios/outdoor-unit-base-line.yaml'),
})
const typed = async (words: readonly string[], change?: (text: string) => string) => {
  const shell = memoryShell(files(change), { store: keptRuns() })
  const code = await main([...words], shell)
  return { code, ...shell.said, files: shell.files }
}
const few = ['--replications', '3']

const WEEKS = 'week,units,shifts\nW1,3170,10\nW2,3205,10\nW3,2540,8\n'
const STATIONS = 'station,seconds,n,sd\nS6,66.2,40,2.6\n'

describe.each<readonly [string, string, readonly string[], number]>([
  ['payback', '“zoned loop” pays back in', few, 4],
  ['criteria', 'With all weights drawn anywhere within ± 30', few, 4],
  ['screen', 'above guidance value', few, 4],
  ['promise', 'Promised of “zoned loop”: at least', ['--replications', '12'], 3],
  ['acceptance', 'A line that meets the forecast of “zoned loop” makes', ['--replications', '40'], 2],
  ['trial', 'The trial may end: at 2 h', ['--replications', '40', '--counts', '5,6,7,8'], 1],
  [
    'followup',
    'The promise no longer stands',
    ['--replications', '12', '--weeks', 'weeks.csv', '--stations', 'stations.csv', '--write', 'now.yaml'],
    2,
  ],
])('%s', (command, says, few, tables) => {
  test('is told in the terminal, and as files of tables', async () => {
    const { code, out, files: written } = await typed([command, DECISION, ...few, '--csv', 'tables'])
    expect(code).toBe(0)
    expect(out.replace(/\s+/g, ' ')).toContain(says)
    expect([...written.keys()].filter((name) => name.startsWith('tables/')).length).toBeGreaterThan(tables)
  })
  test('its document is what its schema says', async () => {
    const schema = JSON.parse((await typed(['schema', '--of', command])).out)
    const valid = schemaCheck(schema)
    const { out, code } = await typed([command, DECISION, ...few, '--json'])
    const told = JSON.parse(out)
    expect(code).toBe(0)
    expect(valid(told), JSON.stringify(valid.errors?.slice(0, 5))).toBe(true)
    expect(valid({ ...told, surprise: 1 })).toBe(false)
  })
  test('a wrong file is told with place and remedy, and nothing is run', async () => {
    const { code, err, out } = await typed([command, DECISION, ...few], (text) => text.replace('38 €/h', '38,5 €/h').replace('24 V', '24'))
    expect([code, out]).toEqual([2, ''])
    expect(err.replace(/\s+/g, ' ')).toContain('E_DECIMAL_COMMA money.wage')
    expect(err.replace(/\s+/g, ' ')).toContain('E_UNIT_MISSING screening.voltage')
    expect(err).toContain('2 problems found; nothing was run.')
  })
  test('a scenario that is not there is named', async () => {
    const { code, err } = await typed([command, DECISION, ...few], (text) => text.replace('file: push-line.yaml', 'file: pull-line.yaml'))
    expect([code, err]).toEqual([2, expect.stringContaining(`there is no file "${FOLDER}/pull-line.yaml" here`)])
  })
})

test('what the question needs and the file has not is named', async () => {
  const without = (part: string) => (text: string) => text.replace(new RegExp(`\\n${part}:\\n(?:  .*\\n)+`), '\n')
  const money = await typed(['payback', DECISION, ...few], without('money'))
  expect([money.code, money.err]).toEqual([2, expect.stringContaining('there is no money in')])
  const screening = await typed(['screen', DECISION, ...few], without('screening'))
  expect([screening.code, screening.err]).toEqual([2, expect.stringContaining('there is no screening in')])
})

test('the recalibrated scenario is a right one, with the measured work in it', async () => {
  const words = ['followup', DECISION, '--replications', '12', '--weeks', 'weeks.csv', '--stations', 'stations.csv', '--write', 'now.yaml']
  const { files: written } = await typed(words)
  const { scenario, problems } = readScenario(written.get('now.yaml')!)
  expect(problems.filter(({ severity }) => severity === 'error')).toEqual([])
  expect(workSeconds(scenario!)[5]).toBeCloseTo(66.2, 6)
  expect(workSeconds(scenario!)[1]).toBeCloseTo(60.2, 6)
})

describe('shifts that differ', () => {
  const SHIFTS = 'scenarios/three-shifts/three-shifts.decision.yaml'
  const line = 'scenarios/three-shifts/housing-line.yaml'
  const ask = async (words: readonly string[], change: (text: string) => string = (text) => text) => {
    const shell = memoryShell({ [SHIFTS]: change(read(SHIFTS)), [line]: read(line), 'weeks.csv': WEEKS }, { store: keptRuns() })
    const code = await main([...words], shell)
    return { code, ...shell.said, files: shell.files }
  }
  test('are told by shift, day and week, with a file for each table and a document that is what its schema says', async () => {
    const { code, out, files: written } = await ask(['promise', SHIFTS, '--replications', '24', '--csv', 'tables'])
    expect(code).toBe(0)
    expect(out).toContain('Nothing is promised of weeks')
    expect([...written.keys()]).toEqual(expect.arrayContaining(['tables/promise-units.csv', 'tables/promise-shifts.csv']))
    const valid = schemaCheck(JSON.parse((await ask(['schema', '--of', 'shifts'])).out))
    const told = JSON.parse((await ask(['promise', SHIFTS, '--replications', '24', '--json'])).out)
    expect(valid(told), JSON.stringify(valid.errors?.slice(0, 5))).toBe(true)
    expect(valid({ ...told, surprise: 1 })).toBe(false)
    const units = told.shifts.map((shift: { units: number[] }) => shift.units)
    expect(told.weekUnits[0]).toBe(
      [5, 5, 4].reduce((sum, days, shift) => sum + units[shift].slice(0, days).reduce((all: number, one: number) => all + one, 0), 0),
    )
  })
  test('a shift changes what its alternative has changed; nobody learns in a shift without hand work', async () => {
    const words = ['promise', SHIFTS, '--replications', '4', '--json']
    const quicker = (text: string): string => text.replace('of: as it stands', 'of: quicker tester')
    const [plain, changed] = [JSON.parse((await ask(words)).out), JSON.parse((await ask(words, quicker)).out)]
    const [before, after] = [plain, changed].map((told) => told.shifts.map((shift: { units: number[] }) => shift.units[0]))
    expect(after[2]).toBeGreaterThan(before[2] * 1.05)
    const [early, , night] = plain.shifts
    expect(early.slower.at(-1).mean).toBeLessThan(0.9 * early.slower[0].mean)
    expect(night.slower.at(-1).mean).toBeGreaterThan(0.98 * night.slower[0].mean)
  })
  test('what does not go is refused: a variation that is not there, weeks of shifts that differ', async () => {
    const wrong = await ask(['promise', SHIFTS], (text) => text.replace('variation: two people', 'variation: two peple'))
    expect([wrong.code, wrong.err]).toEqual([2, expect.stringContaining('two people')])
    const weeks = await ask(['followup', SHIFTS, '--weeks', 'weeks.csv'])
    expect([weeks.code, weeks.err]).toEqual([2, expect.stringContaining('are followed up for shifts that are alike')])
  })
})

test('a table that is wrong is told with its line, before anything runs', async () => {
  const shell = memoryShell({ ...files(), 'weeks.csv': 'week,units,shifts\nW1,many,10\n' })
  expect(await main(['followup', DECISION, '--weeks', 'weeks.csv'], shell)).toBe(2)
  expect(shell.said.err).toContain('weeks.csv:2: units is "many"; write a whole number from 0 on')
})
