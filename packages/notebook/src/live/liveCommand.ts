/** What somebody types to get the numbers of a page again. */
import { shellWord } from '@loopwright/charts/table'
import type { Changes } from '@loopwright/scenario'
import type { LiveSetting } from './liveTold.ts'

interface Sample {
  readonly replications: number
  readonly seed: string
}

/**
 * The comparison of the file with settings of it.
 *
 * @param changes  of each setting, in their order
 * @example compareCommand('a.yaml', [{ name: 'B', values: {} }], [{ 'carriers.count': '5' }], { replications: 20, seed: '1' }) // => "loopwright compare a.yaml --set 'B: carriers.count=5' --replications 20 --seed 1"
 */
export function compareCommand(file: string, settings: readonly LiveSetting[], changes: readonly Changes[], sample: Sample): string {
  const sets = settings.flatMap(({ name }, index) => {
    const said = Object.entries(changes[index]!).map(
      ([path, value]) => `${path}=${typeof value === 'string' ? value : JSON.stringify(value)}`,
    )
    return said.length === 0 ? [] : [`--set ${shellWord(`${name}: ${said.join('; ')}`)}`]
  })
  return ['loopwright compare', shellWord(file), ...sets, ...sampleWords(sample)].join(' ')
}

/** The comparison of a file with a variation of it. */
export function variationCommand(file: string, name: string, sample: Sample): string {
  return ['loopwright compare', shellWord(file), `--variations ${shellWord(name)}`, ...sampleWords(sample)].join(' ')
}

function sampleWords({ replications, seed }: Sample): string[] {
  return [`--replications ${replications}`, `--seed ${shellWord(seed)}`]
}

/**
 * The file that a variation is kept in, beside that of the scenario.
 *
 * @example keptName('lines/line.yaml', 'More carriers') // => 'line-more-carriers.yaml'
 */
export function keptName(file: string, name: string): string {
  const [, base, ending] = /([^/\\]*?)(\.[^./\\]*)?$/.exec(file)!
  const words = name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
  return `${base === '' ? 'scenario' : base}-${words === '' ? 'changed' : words}${ending ?? '.yaml'}`
}
