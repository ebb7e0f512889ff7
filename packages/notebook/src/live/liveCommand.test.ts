import { expect, test } from 'vitest'
import { compareCommand, keptName, variationCommand } from './liveCommand.ts'

const sample = { replications: 40, seed: '1' }

test('a comparison of a file with settings of it; one that changes nothing is left out', () => {
  const settings = [
    { name: 'A', values: {} },
    { name: 'B', values: {} },
  ]
  expect(compareCommand('a.yaml', settings, [{ 'drive.speed': '18 m/min', a: { b: '5 s' } }, {}], sample)).toBe(
    `loopwright compare a.yaml --set 'A: drive.speed=18 m/min; a={"b":"5 s"}' --replications 40 --seed 1`,
  )
  expect(variationCommand('a b.yaml', 'B', sample)).toBe("loopwright compare 'a b.yaml' --variations B --replications 40 --seed 1")
})

test('a kept file has the name of the scenario and of the variation, and no folder', () => {
  expect(keptName('C:\\lines\\line.yml', 'fast & <b>')).toBe('line-fast-b.yml')
  expect(keptName('/a/b/.yaml', '../../etc')).toBe('scenario-etc.yaml')
  expect(keptName('line', '…')).toBe('line-changed.yaml')
})
