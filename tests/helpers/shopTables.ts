/** Tables of the shop floor that several tests read. All numbers are invented. */
import { workbookBytes } from './workbook.ts'

/** Invented: two tasks, two operators. */
export const TIMES = `task,operator,seconds\n${Array.from({ length: 20 }, (_, index) => `wire,${index % 2 === 0 ? 'A' : 'B'},${40 + ((index * 7) % 11)}\nseal,A,${30 + ((index * 5) % 7)}`).join('\n')}\n`

/** The same on the sheet Monday of a workbook. */
export const TIMES_WORKBOOK = workbookBytes({
  rows: [],
  more: {
    Monday: TIMES.trim()
      .split('\n')
      .map((line) => line.split(',')),
  },
})
