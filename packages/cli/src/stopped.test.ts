/** Ctrl-C, before anything has been simulated and at any later moment: every command that runs something ends by 130, with a sentence. */
import { expect, test } from 'vitest'
import { decisionOf } from '../../../tests/helpers/decisionText.ts'
import { memoryShell } from '../../../tests/helpers/memoryShell.ts'
import { SMALL_LINE } from '../../../tests/helpers/scenarioTexts.ts'
import { main } from './main.ts'
import { Stopped } from './shell/shell.ts'

const FILES = {
  'line.yaml': SMALL_LINE,
  'decision.yaml': decisionOf('line.yaml'),
  'weeks.csv': 'week,units,shifts\n1,500,10\n2,510,10\n3,520,10\n',
}
const FEW = ['--replications', '3']
const MORE = ['--replications', '40']

const COMMANDS: readonly (readonly string[])[] = [
  ['run', 'line.yaml'],
  ['run', 'line.yaml', ...FEW],
  ['sweep', 'line.yaml', '--carriers', '3..4', ...FEW],
  ['carriers', 'line.yaml', '--carriers', '3..4', '--at-most', '20'],
  ['forecast', 'line.yaml', ...FEW],
  ['compare', 'line.yaml', '--set', 'fast: drive.speed=20 m/min', ...FEW],
  ['grid', 'line.yaml', '--carriers', '3..4', '--set', 'drive.speed=10,15 m/min', ...FEW],
  ['drivers', 'line.yaml', ...FEW],
  ['losses', 'line.yaml', ...FEW],
  ['order', 'line.yaml', '--move', 'B', '--zones', 'Z04,Z05', '--check-replications', '3'],
  ['steady', 'line.yaml', '--runs', '2'],
  ['trace', 'line.yaml'],
  ['trace', 'line.yaml', '--out', 'picture.html', '--to', '1 min'],
  ['balance', 'line.yaml', '--stations', '2'],
  ['check', 'line.yaml'],
  ['payback', 'decision.yaml', ...FEW],
  ['screen', 'decision.yaml', ...FEW],
  ['criteria', 'decision.yaml', ...FEW],
  ['acceptance', 'decision.yaml', ...MORE],
  ['trial', 'decision.yaml', '--counts', '20', ...MORE],
  ['promise', 'decision.yaml', ...FEW],
  ['followup', 'decision.yaml', '--weeks', 'weeks.csv', ...MORE],
]

/** Carries out a command with a Ctrl-C in a piece of work, counted from 0; gives how many pieces were begun. */
async function stoppedIn(piece: number, words: readonly string[]) {
  const stop = new AbortController()
  let begun = 0
  const small = memoryShell(FILES)
  const shell = {
    ...small,
    signal: stop.signal,
    inOneGo: async <T>(what: string, work: () => T): Promise<T> => {
      begun += 1
      if (begun <= piece) return work()
      stop.abort()
      throw new Stopped(`stopped while ${what}`)
    },
  }
  const code = await main(words, shell)
  return { code, begun, ...small.said }
}

/** Carries out a command with a Ctrl-C that came before so many pieces of work were done, which each then go on to their end. */
async function abortedBefore(piece: number, words: readonly string[]) {
  const stop = new AbortController()
  let begun = 0
  const small = memoryShell(FILES)
  const shell = {
    ...small,
    signal: stop.signal,
    inOneGo: async <T>(_: string, work: () => T): Promise<T> => {
      if (begun === piece) stop.abort()
      begun += 1
      return work()
    },
  }
  const code = await main(words, shell)
  return { code, begun, ...small.said }
}

test.each(COMMANDS)('%s %s %s %s %s', { tags: 'long' }, async (...words) => {
  for (const more of words[0] === 'check' || words[0] === 'trace' ? [[]] : [[], ['--json'], ['--csv', 'tables']]) {
    for (const given of [stoppedIn, abortedBefore]) {
      const whole = await stoppedIn(Number.POSITIVE_INFINITY, [...words, ...more])
      expect([whole.code, whole.err]).toEqual([0, expect.any(String)])
      // reads, and then runs or tells
      expect(whole.begun).toBeGreaterThan(1)
      for (let piece = 0; piece < whole.begun; piece += 1) {
        const { code, out, err } = await given(piece, [...words, ...more])
        expect(err).not.toContain('defect')
        expect(err + out).not.toMatch(/\n\s+at /)
        expect([piece, code]).toEqual([piece, 130])
      }
    }
  }
})
