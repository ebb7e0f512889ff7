/** Whatever is asked of a line whose stops come ten thousand times a second is counted before it is begun, and said in words. */
import { expect, test } from 'vitest'
import { decisionOf } from '../../../tests/helpers/decisionText.ts'
import { memoryShell } from '../../../tests/helpers/memoryShell.ts'
import { RING } from '../../../tests/helpers/scenarioTexts.ts'
import { main } from './main.ts'

const often = RING.replace('after: exponential 40 min, lasts: exponential 60 s', 'after: exponential 0.1 ms, lasts: exponential 0.1 ms')
const FILES = {
  'line.yaml': often,
  'line.decision.yaml': decisionOf('line.yaml'),
  'weeks.csv': 'week,units,shifts\nW1,60,2\n',
}

test('the line is another one', () => expect(often).not.toBe(RING))

test.each([
  'run line.yaml --replications 3000',
  'sweep line.yaml',
  'carriers line.yaml',
  'compare line.yaml line.yaml --replications 200',
  'grid line.yaml --carriers 2..4',
  'order line.yaml --move S2',
  'drivers line.yaml',
  'losses line.yaml',
  'steady line.yaml --runs 1000',
  'forecast line.yaml',
  'payback line.decision.yaml',
  'criteria line.decision.yaml',
  'screen line.decision.yaml --replications 100',
  'promise line.decision.yaml',
  'acceptance line.decision.yaml',
  'trial line.decision.yaml --counts 3,4',
  'followup line.decision.yaml --weeks weeks.csv',
])('%s', async (words) => {
  const shell = memoryShell(FILES)
  expect(await main(words.split(' '), shell)).toBe(2)
  expect(shell.said.err.replaceAll(/\s+/g, ' ')).toMatch(
    /this asks for (?:about|at least) [\d.]+·10[⁰¹²³⁴⁵⁶⁷⁸⁹]+ events, [\d.]+ hours of a core: .* \(--yes\)/,
  )
  // and what is said can be typed
  const help = memoryShell()
  await main([words.split(' ')[0]!, '--help'], help)
  expect(help.said.out).toContain('--yes')
})

test('it is said already by the check of the line', async () => {
  const shell = memoryShell(FILES)
  expect(await main(['check', 'line.yaml'], shell)).toBe(0)
  expect(shell.said.out.replaceAll(/\s+/g, ' ')).toMatch(
    /One run of the line has about [\d.]+·10⁸ events, [\d.]+ s of a core: are the shortest times of stops and arrivals what was meant\?/,
  )
})
