/** Scenarios: their reader, and what is told of one by a command. */
import { readdirSync, readFileSync } from 'node:fs'
import { formatProblems, type Problem, readScenario, writeScenario } from '@loopwright/scenario'
import { EXACT_LINE, OPEN_LINE, RING, SMALL_LINE, TEN_ZONES } from '../../helpers/scenarioTexts.ts'
import { oddFigure, plain, type Reader } from '../reader.ts'
import { commandOn } from './commands.ts'

const folder = new URL('../../../scenarios/', import.meta.url)
export const SCENARIOS = [
  EXACT_LINE,
  OPEN_LINE,
  RING,
  SMALL_LINE,
  ...readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => readFileSync(new URL(name, folder), 'utf8')),
]

/** What is wrong with how problems are told of a text. */
export function problemFaults(text: string, problems: readonly Problem[], taken: boolean): string | null {
  if (!taken && !problems.some(({ severity }) => severity === 'error')) return 'nothing was read, and no word why'
  const lines = text.split('\n').length
  const lost = problems.find(({ line, column }) => !(line >= 1 && line <= lines && column >= 1))
  if (lost !== undefined) return `a finding without a place: ${lost.code}`
  if (problems.length > 0) formatProblems(problems, text, 'line.yaml')
  // a text that says such a word itself may be told of it
  return /NaN|Infinity|undefined|\[object/.test(text)
    ? null
    : (problems.map(({ message }) => oddFigure(message)).find((odd) => odd !== null) ?? null)
}

export const scenario: Reader = plain(SCENARIOS, (text) => {
  const { scenario: found, problems } = readScenario(text, { files: () => null })
  const fault = problemFaults(text, problems, found !== null)
  if (fault !== null || found === null) return fault
  const again = readScenario(writeScenario(found))
  const lost = again.problems.find(({ severity }) => severity === 'error')
  return lost === undefined ? null : `what was written cannot be read: ${lost.message}`
})

/** A table that a scenario names: measured times beside it. */
const BESIDE = ['seconds\n45\n46.2\n48\n51\n', 'task;seconds\nfit;45,5\nfit;46,1\nfit;50\n', '45\n46\n47\n']
const WITH_FILE = TEN_ZONES.replace(
  'work: { fit: 6 s ± 20 % }',
  'work: { fit: { kind: empirical, file: times.csv, column: seconds, unit: s } }',
)

export const tableBeside: Reader = plain(BESIDE, (text) => {
  const { scenario: found, problems } = readScenario(WITH_FILE, { files: () => text })
  return problemFaults(WITH_FILE, problems, found !== null)
})

export const whatIsTold: Reader = {
  texts: SCENARIOS,
  spoil: null,
  every: 30,
  async try(text) {
    const { fault, files } = await commandOn(['run', 'line.yaml', '--csv', 'tables', '--out', 'page.html', '--svg', 'pictures'], {
      'line.yaml': text,
    })
    if (fault !== null) return fault
    const strange = [...files.keys()].find((name) => !/^(?:line\.yaml|page\.html|tables\/[\w.-]+\.csv|pictures\/[\w.-]+\.svg)$/.test(name))
    if (strange !== undefined) return `"${strange}" was written`
    const page = files.get('page.html') ?? ''
    return /<script>alert|<img src=x/.test(page) ? 'the page holds a tag of the scenario' : null
  },
}
