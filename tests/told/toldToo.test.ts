/** The other half of the lines, so that both cores are busy. */
import { judgeLines } from './judge.ts'
import { LINES } from './lines.ts'

judgeLines(LINES.filter(({ name }, index) => index % 2 === 1 && name !== 'pump-line'))
