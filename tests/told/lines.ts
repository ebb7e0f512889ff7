/** The lines whose telling is judged: the scenarios of the project, and those of `lines/`, each of which says its one truth in its first comment. */
import { readdirSync, readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { STORE } from '@loopwright/line'
import { readScenario, type Scenario } from '@loopwright/scenario'
import { parse } from 'yaml'

export interface ToldLine {
  /** the file's name without ending */
  readonly name: string
  readonly file: string
  readonly text: string
  readonly scenario: Scenario
  /** as written, for what only people read */
  readonly written: Readonly<Record<string, unknown>>
}

const FOLDERS = ['scenarios', 'tests/told/lines']

export const LINES: readonly ToldLine[] = FOLDERS.flatMap((folder) =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .sort()
    .map((file) => readLine(join(folder, file))),
)

/** The line of the measured data, of which their commands alone are told. */
export const PILOT: ToldLine = { ...readLine('notebooks/data/complete.yaml'), name: 'pilot-line' }

export const lineNamed = (name: string): ToldLine => {
  const line = LINES.find((one) => one.name === name)
  if (line === undefined) throw new Error(`there is no line "${name}" in ${FOLDERS.join(', ')}`)
  return line
}

function readLine(file: string): ToldLine {
  const text = readFileSync(file, 'utf8')
  const { scenario, problems } = readScenario(text)
  if (scenario === null) throw new Error(`${file} has errors: ${problems.map(({ message }) => message).join('; ')}`)
  return { name: basename(file, '.yaml'), file, text, scenario, written: parse(text) as Record<string, unknown> }
}

/** Carriers leave it and come back: it is no loop. */
export const isOpen = ({ scenario }: ToldLine): boolean => scenario.line.paths.some(({ from, to }) => from === STORE || to === STORE)
