import { spawnSync, type SpawnSyncReturns } from 'node:child_process'
import { expect, test } from 'vitest'
import { CASES } from './cases.ts'
import { schemaCheck } from '../helpers/schemaCheck.ts'
import type { BenchDocument, Told } from './document.ts'
import { findCompiler } from './native/native.ts'

/** `npm run bench -- --json …`, one round of a small share of the work: its form is looked at, never its speed. */
function benched(words: string, environment: NodeJS.ProcessEnv = {}): SpawnSyncReturns<string> {
  const node = ['--conditions=loopwright-source', '--import', 'tsx']
  const given = ['--json', '--rounds', '1', '--share', '0.002', ...words.split(' ')]
  return spawnSync(process.execPath, [...node, 'tests/bench/bench.ts', ...given], {
    encoding: 'utf8',
    env: { ...process.env, ...environment },
  })
}

function bench(words: string): BenchDocument {
  const done = benched(words)
  expect(done.stderr).toMatch(/^(round 1\/1 {2}.*\n)+$/)
  expect(done.status).toBe(0)
  return JSON.parse(done.stdout) as BenchDocument
}

const word = { type: 'string', minLength: 1 }
const number = { type: 'number', exclusiveMinimum: 0 }
const figure = {
  type: 'object',
  required: ['median', 'spread', 'ratio', 'ratioSpread'],
  additionalProperties: false,
  properties: {
    median: number,
    spread: { type: 'array', items: number, minItems: 2, maxItems: 2 },
    ratio: { type: ['number', 'null'] },
    ratioSpread: { type: ['array', 'null'], items: number },
  },
}
const part = {
  type: 'object',
  required: ['calibrationNanoseconds'],
  properties: { calibrationNanoseconds: number },
  additionalProperties: figure,
  minProperties: 2,
}
const figures = { replicationsPerSecond: figure, simulatedHoursPerSecond: figure, peakMegabytes: figure }
const engine = { ...part, required: [...part.required, ...Object.keys(figures)], properties: { ...part.properties, ...figures } }
const fields = (kind: 'engines' | 'parts', of: object) => ({
  type: 'object',
  required: ['name', 'about', kind],
  additionalProperties: false,
  properties: { name: { type: 'string' }, about: { type: 'string' }, [kind]: of },
})
const schema = {
  type: 'object',
  required: ['machine', 'versions', 'rounds', 'cases'],
  additionalProperties: false,
  properties: {
    machine: {
      type: 'object',
      required: ['processor', 'cores', 'memoryGigabytes', 'load'],
      properties: { processor: { type: 'string' }, cores: number, memoryGigabytes: number, load: { type: 'number' } },
      additionalProperties: false,
    },
    versions: {
      type: 'object',
      required: ['loopwright', 'node', 'v8', 'system'],
      properties: { loopwright: word, node: word, v8: word, system: word },
      additionalProperties: word,
    },
    rounds: { const: 1 },
    cases: {
      type: 'array',
      items: {
        oneOf: [
          fields('engines', {
            type: 'object',
            required: ['events'],
            additionalProperties: false,
            properties: { events: engine, recursion: engine },
          }),
          fields('parts', { type: 'object', minProperties: 1, additionalProperties: part }),
        ],
      },
    },
  },
}

test('the document: machine, versions, and of each case medians with their spread and the ratio to the calibrating loop', () => {
  const told = bench('--only small,queue')
  const valid = schemaCheck(schema)
  expect(valid(told), JSON.stringify(valid.errors)).toBe(true)
  expect(valid({ ...told, rounds: 2 })).toBe(false)
  expect(told.cases.map(({ name, engines, parts }) => [name, ...Object.keys(engines ?? parts!)])).toEqual([
    ['small', 'events', 'recursion'],
    ['queue', '16', '1000', '100000'],
  ])
})

// skipped because it needs a C++ compiler, which not every machine has
test.skipIf(findCompiler() === null)('both engines beside C++, where the document names the ratio', { tags: 'long' }, () => {
  const { cases } = JSON.parse(benched('--native').stdout) as BenchDocument
  expect(cases.map(({ name, parts }) => [name, ...Object.keys(parts!)])).toEqual([['native', 'events', 'recursion']])
  for (const { calibrationNanoseconds, ...figures } of Object.values(cases[0]!.parts!)) {
    expect(Object.keys(figures)).toEqual([
      'replicationsPerSecond',
      'nativeReplicationsPerSecond',
      'shareOfNative',
      'nativeO3ReplicationsPerSecond',
      'shareOfNativeO3',
      'peakMegabytes',
    ])
    for (const told of Object.values(figures as Record<string, Told>)) expect(told.median).toBeGreaterThan(0)
  }
})

test('without a C++ compiler, --native says what it lacks', () => {
  const { status, stderr } = benched('--native', { PATH: '', CXX: '' })
  expect(status).not.toBe(0)
  expect(stderr).toContain('--native needs a C++ compiler: none answers by the name in CXX, nor as g++, clang++ or c++')
})

test('the cases, by name', () => {
  expect(Object.keys(CASES)).toEqual(['small', 'large', 'demo', 'general', 'graph', 'sweep', 'first answer', 'queue', 'start'])
  expect(Object.entries(CASES).flatMap(([name, { byEngine }]) => (byEngine ? [name] : []))).toEqual([
    'small',
    'large',
    'demo',
    'general',
    'graph',
  ])
})

test('a case that is none is named, with those that are', () => {
  const { status, stderr } = benched('--only tiny')
  expect(status).not.toBe(0)
  expect(stderr).toContain('no case is called tiny; there are small, large, demo, general, graph, sweep, first answer, queue')
})
