/** Ctrl-C, before anything has been simulated and at any later moment: every command that runs something ends by 130, with a sentence. */
import { expect, test } from 'vitest'
import { decisionOf } from '../../../tests/helpers/decisionText.ts'
import { memoryShell } from '../../../tests/helpers/memoryShell.ts'
import { SMALL_LINE } from '../../../tests/helpers/scenarioTexts.ts'
import { studyWords } from '../../../tests/helpers/studyWords.ts'
import { memoryStore, type Store } from '@loopwright/study/machine'
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
  ...studyWords(3),
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

/** What becomes of a piece of work, counted from 0, in which a Ctrl-C comes: it is given up, or goes on to its end. */
type Becomes = 'given up' | 'goes on'

/** Carries out a command with a Ctrl-C in a piece of work; gives how many pieces were begun. What was run before is in the store. */
async function stoppedIn(piece: number, words: readonly string[], becomes: Becomes, store: Store) {
  const stop = new AbortController()
  let begun = 0
  const small = memoryShell(FILES, { store })
  const shell = {
    ...small,
    signal: stop.signal,
    inOneGo: async <T>(what: string, work: () => T): Promise<T> => {
      const stopped = begun >= piece
      begun += 1
      if (stopped) stop.abort()
      if (stopped && becomes === 'given up') throw new Stopped(`stopped while ${what}`)
      return work()
    },
  }
  const code = await main(words, shell)
  return { code, begun, ...small.said }
}

test.each(COMMANDS)('%s %s %s %s %s', { tags: 'long' }, async (...words) => {
  const kept = memoryStore()
  for (const more of words[0] === 'check' || words[0] === 'trace' ? [[]] : [[], ['--json'], ['--csv', 'tables']]) {
    const whole = await stoppedIn(Number.POSITIVE_INFINITY, [...words, ...more], 'goes on', kept)
    expect([whole.code, whole.err]).toEqual([0, expect.any(String)])
    // reads, and then runs or tells
    expect(whole.begun).toBeGreaterThan(1)
    for (const becomes of ['given up', 'goes on'] as const)
      for (let piece = 0; piece < whole.begun; piece += 1) {
        const runs = becomes === 'goes on' && more.length === 0 ? memoryStore() : kept
        const { code, out, err } = await stoppedIn(piece, [...words, ...more], becomes, runs)
        expect(err).not.toContain('defect')
        expect(err + out).not.toMatch(/\n\s+at /)
        expect([piece, code]).toEqual([piece, 130])
      }
  }
})
