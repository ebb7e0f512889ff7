import { Command } from 'commander'
import { expect, test } from 'vitest'
import { memoryShell } from '../../../../tests/helpers/memoryShell.ts'
import { addOptions, lineOptions, machineOptions, type OptionGroup, option, outputOptions, sampleOptions } from './options.ts'
import { program } from '../program.ts'

/** the options that several commands have, in the order in which they stand everywhere */
const ORDER = [
  '--variation',
  '--replications',
  '--replication',
  '--runs',
  '--at-most',
  '--check-replications',
  '--seed',
  '--trace',
  '--json',
  '--csv',
  '--csv-style',
  '--out',
  '--open',
  '--svg',
  '--png',
  '--pdf',
  '--pptx',
  '--watch',
  '--workers',
  '--port',
  '--engine',
  '--yes',
  '--part',
  '--queue',
  '--store',
  '--fresh',
]

const commands = (command: Command): readonly Command[] => [command, ...command.commands.flatMap(commands)]

test('the order of options is the same everywhere: line, question, sample, output, machine', () => {
  const all = commands(program(memoryShell(), 'loopwright', () => {})).filter((command) => command.commands.length === 0)
  expect(all.length).toBeGreaterThan(15)
  for (const command of all) {
    const shared = command.options.map((one) => one.long!).filter((long) => ORDER.includes(long))
    expect([command.name(), ...shared]).toEqual([command.name(), ...ORDER.filter((long) => shared.includes(long))])
    const own = command.options.findIndex((one) => !ORDER.includes(one.long!))
    const sample = command.options.findIndex((one) => one.long === '--seed')
    if (own >= 0 && sample >= 0 && command.name() !== 'run') expect(own).toBeLessThan(sample)
  }
})

test('one name, one meaning: --replications is of each line or count, and all studies that draw can be repeated by their seed', () => {
  const all = commands(program(memoryShell(), 'loopwright', () => {}))
  for (const one of all.flatMap((command) => command.options)) {
    if (one.long === '--replications') expect(one.description).toMatch(/^windows to simulate of each line or number of carriers/)
    if (one.long === '--csv-style') expect(one.argChoices).toEqual(['comma', 'semicolon'])
  }
  const told = ['run', 'steady', 'carriers', 'sweep', 'compare', 'order', 'drivers', 'losses']
  for (const name of told) {
    const longs = all.find((command) => command.name() === name)!.options.map((one) => one.long)
    expect([name, ...longs]).toEqual(
      expect.arrayContaining([name, '--seed', '--json', '--csv', '--csv-style', '--out', '--open', '--workers']),
    )
  }
})

test('groups keep their order, however they are given', () => {
  const groups: Partial<Record<OptionGroup, ReturnType<typeof lineOptions>>> = {
    machine: machineOptions(),
    output: outputOptions(),
    sample: sampleOptions(5),
    question: [option('--own <text>', 'its own')],
    line: lineOptions(),
  }
  const command = addOptions(new Command('any'), groups)
  expect([command.options[0]!.long, command.options[1]!.long, command.options.at(-1)!.long]).toEqual(['--variation', '--own', '--fresh'])
  const headings = command.helpInformation().match(/^The .*:$/gm)
  expect(headings).toEqual(['The line:', 'The question:', 'The sample:', 'The output:', 'The machine:'])
})
