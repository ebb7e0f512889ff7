import { expect, test } from 'vitest'
import { moreChanges, setChange } from './setChange.ts'

test('a name and its changes', () => {
  expect(setChange('fast: drive.speed=18 m/min; carriers.count=10')).toEqual({
    name: 'fast',
    changes: { 'drive.speed': '18 m/min', 'carriers.count': '10' },
  })
  expect(setChange('two at the test: stations.S6={ zone: Z16, name: "Test; twice" }').changes).toEqual({
    'stations.S6': '{ zone: Z16, name: "Test; twice" }',
  })
})

test('without a name it is called by its changes; a colon behind "=" is part of the value', () => {
  expect(setChange('drive.speed=18 m/min')).toEqual({ name: 'drive.speed=18 m/min', changes: { 'drive.speed': '18 m/min' } })
  expect(setChange('calendar.shift.from="06: 00"').changes).toEqual({ 'calendar.shift.from': '"06: 00"' })
})

test('a path may be a word that every record of JavaScript has', () => {
  expect(setChange('constructor=3').changes).toEqual({ constructor: '3' })
  expect(() => setChange('toString=3; toString=4')).toThrow('toString is changed twice')
})

test('the option again is another line', () => {
  expect(
    ['a: x=1', 'b: x=2'].reduce<ReturnType<typeof moreChanges>>((before, text) => moreChanges(text, before), []).map(({ name }) => name),
  ).toEqual(['a', 'b'])
})

test('what is missing is shown at its column', () => {
  expect(() => setChange('fast: drive.speed')).toThrow(`carriers.count=10".\n  fast: drive.speed\n  ${' '.repeat(6)}^`)
  expect(() => setChange('a: x=1;; y=2')).toThrow(`a: x=1;; y=2\n  ${' '.repeat(7)}^`)
  expect(() => setChange('a: x=1; y=')).toThrow(`There is no value behind "y=".\n  a: x=1; y=\n  ${' '.repeat(10)}^`)
  expect(() => setChange('a: x=1; x=2')).toThrow('x is changed twice')
})
