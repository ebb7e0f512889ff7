import { memoryStore, type Store } from '@loopwright/study/machine'
import { expect, test } from 'vitest'
import { decisionOf } from '../../../tests/helpers/decisionText.ts'
import { memoryShell } from '../../../tests/helpers/memoryShell.ts'
import { SMALL_LINE } from '../../../tests/helpers/scenarioTexts.ts'
import { studyWords } from '../../../tests/helpers/studyWords.ts'
import { main } from './main.ts'

type Entry = ReturnType<Store['read']>[number]

/** What stands in an entry in place of runs, under a checksum that is right. */
const WRONG: Readonly<Record<string, (entry: Entry) => Entry>> = {
  'foreign JSON': (entry) => ({
    ...entry,
    bytes: new TextEncoder().encode(JSON.stringify(Array(entry.to - entry.from).fill({ answer: 42 }))),
  }),
  'as many bytes of something else': (entry) => ({
    ...entry,
    bytes: entry.bytes.map((_, index) => '[{"answer":42}] '.charCodeAt(index % 16)),
  }),
  nothing: (entry) => ({ ...entry, bytes: new Uint8Array(0) }),
  'wrong bounds': (entry) => ({ ...entry, to: entry.to + 1 }),
}

const FEW = ['--replications', '5']

test.each([...studyWords(5), ['criteria', 'decision.yaml', ...FEW], ['promise', 'decision.yaml', ...FEW]])(
  '%s %s %s %s: what is kept and is no run is dropped, and run again',
  async (...words) => {
    const store = memoryStore()
    const told = async (opened: Store): Promise<{ code: number; out: string; err: string }> => {
      const small = memoryShell({ 'line.yaml': SMALL_LINE, 'decision.yaml': decisionOf('line.yaml') })
      return { code: await main([...words, '--json'], { ...small, openStore: async () => opened }), ...small.said }
    }
    const right = await told(store)
    expect([right.code, store.report.kept]).toEqual([0, expect.any(Number)])
    expect(store.report.kept).toBeGreaterThan(0)
    for (const [name, spoil] of Object.entries(WRONG)) {
      const dropped: string[] = []
      const place = (key: string, { from }: Pick<Entry, 'from'>): string => `${key} ${from}`
      const spoilt: Store = {
        get report() {
          return { ...store.report, damaged: dropped.length }
        },
        read: (key) => store.read(key).map((entry) => (dropped.includes(place(key, entry)) ? entry : spoil(entry))),
        write: store.write,
        drop: (key, entry) => void dropped.push(place(key, entry)),
      }
      const again = await told(spoilt)
      expect([name, again.code, again.out]).toEqual([name, 0, right.out])
      expect([name, dropped.length > 0]).toEqual([name, true])
      expect(again.err).toMatch(/store: .* damaged entr.* dropped and computed again/)
    }
  },
)
