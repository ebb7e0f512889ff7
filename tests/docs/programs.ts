import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { notebook, runNotebook } from '@loopwright/notebook'
import { decisionOf } from '../helpers/decisionText.ts'
import { shortShift } from '../helpers/shortShift.ts'
import { TOP } from '../tidy/sources.ts'

export const shortDemo = (): string => shortShift(readFileSync(join(TOP, 'scenarios/outdoor-unit-base-line.yaml'), 'utf8'))

/**
 * Runs the program of a notebook on the demo line, in two short shifts of each line.
 *
 * @param text  without types
 * @returns     the page
 * @throws      whatever the program throws, as where it shows a cell that its story does not have
 */
export async function pageOf(text: string): Promise<string> {
  const body = text.replaceAll(/^import .*$/gm, '').replace('export default', 'return')
  const program: unknown = new Function('notebook', body)(notebook)
  let page = ''
  const effects = {
    readFile: async (path: string) => (path.endsWith('.decision.yaml') ? decisionOf('demo.yaml') : shortDemo()),
    writeFile: async (_: string, written: string) => {
      page = written
    },
    importModule: async () => ({ default: program }),
    log: () => undefined,
    progress: () => undefined,
    now: () => new Date(0),
    signal: new AbortController().signal,
  }
  const run = await runNotebook('program.ts', effects, { replications: 2, workers: 0 })
  if (run.status === 'done' && run.faults.length > 0) throw new Error(run.faults.map(({ message }) => message).join('; '))
  return page
}
