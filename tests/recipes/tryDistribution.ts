/**
 * What is made of a kind that has its file and its row and nothing else, in a process of its own:
 * packages make something of the table of kinds when they are loaded. Prints one JSON document.
 */
import { KINDS } from '../../packages/stats/src/distributions/distributions.ts'
import { rayleigh } from './rayleigh.ts'

Object.assign(KINDS, { rayleigh })
const { distributionContract } = await import('../../packages/stats/src/distributions/distributionContract.ts')
const { distributionWords } = await import('../../packages/notebook/src/inputs/distributionWords.ts')
const { longerTimes, scaledTimes } = await import('@loopwright/stats')
const { simulate } = await import('@loopwright/line')
const { readScenario, scenarioJsonSchema, writeScenario } = await import('@loopwright/scenario')

const time = { kind: 'rayleigh', mode: 8 } as never
const TEXT = `
format: 1
question: Does a new kind of time need more than its file and its row?
name: Four zones
warmup: 0 s
length: 4 h
drive: { speed: 15 m/min }
carriers: { count: 2, length: 0.75 m }
loop: 4 zones of 1 m
stations:
  S1: { zone: Z01, unload: {}, load: { place: { kind: rayleigh, mode: 8 s, shift: 2 s } } }
`

const problemsOf = (text: string) => readScenario(text).problems.map(({ code, path }) => `${code} ${path}`)
const read = readScenario(TEXT)
const line = read.scenario!.line
const run = (engine: 'events' | 'recursion') => simulate(line, { seed: '1', replication: 0, engine })

const found = {
  contract: distributionContract(time, { smooth: true }),
  contractCut: distributionContract({ kind: 'limited', of: time, shift: 1, min: 3, max: 20 }, { smooth: true }),
  contractBroken: distributionContract(time, { smooth: true, draw: (u) => 8.1 * Math.sqrt(-2 * Math.log1p(-u)) }),
  scaled: scaledTimes(time, 2),
  longer: longerTimes(time, 2),
  words: distributionWords(longerTimes(time, 2)),
  problems: problemsOf(TEXT),
  line,
  again: readScenario(writeScenario(read.scenario!)).scenario!.line,
  schema: JSON.stringify(scenarioJsonSchema()),
  ofZero: problemsOf(TEXT.replace('8 s', '0 s')),
  ofOtherKey: problemsOf(TEXT.replace('mode: 8 s', 'mean: 8 s')),
  events: run('events'),
  recursion: run('recursion'),
}
export type Tried = typeof found
process.stdout.write(JSON.stringify(found))
