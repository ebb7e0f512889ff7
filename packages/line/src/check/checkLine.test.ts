import { expect, test } from 'vitest'
import { loopLine } from '../builder/sketchedLine.ts'
import { checkLine } from './checkLine.ts'

const { spec } = loopLine({ zones: 4, zoneLength: 2, drive: { speed: 1 }, carriers: { count: 2, length: 1 }, end: 60 })

test('findings have a path, and zones that share one finding are named together', () => {
  const told = checkLine({ ...spec, paths: spec.paths.map((path) => ({ ...path, distanceMetres: null })) })
  expect(told.map(({ path, message }) => `${path}: ${message}`)).toEqual([
    'zones: the length of zones "Z02", "Z03", "Z04" and "Z01" is not known, and the way in needs it',
    'stations: no station loads products',
    'stations: no station unloads products',
  ])
})
