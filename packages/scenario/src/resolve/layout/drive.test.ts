import { expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

test('reaction 0.1 s and a stagger as long as the reaction, unless the file says so', () => {
  const read = (drive: string) => readScenario(scenarioText(['acceleration: 0.5 m/s²', drive])).scenario?.line
  expect(read('acceleration: 0.5 m/s²')).toMatchObject({ reactionSeconds: 0.1, staggerSeconds: 0.1 })
  expect(read('reaction: 150 ms')).toMatchObject({ reactionSeconds: 0.15, staggerSeconds: 0.15 })
  expect(read('reaction: 150 ms, stagger: 0.3 s')).toMatchObject({ reactionSeconds: 0.15, staggerSeconds: 0.3 })
})
