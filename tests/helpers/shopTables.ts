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

export const STOPS = `place,cause,start,end
S3,tool,2026-11-02 06:40,2026-11-02 06:52
S3,tool,2026-11-02 09:05,2026-11-02 09:11
S3,tool,2026-11-02 12:30,2026-11-02 12:44
S6,leak,2026-11-02 07:15,2026-11-02 07:17
S6,leak,2026-11-03 10:00,2026-11-03 10:09
`

export const ORDERS = `date,model,qty,coldKit
2026-11-02,small,12,yes
2026-11-02,large,5,no
2026-11-03,small,9,no
`

/** Times of a task of the demo line, for all variants together. */
const DATA_TIMES = `task,seconds\n${Array.from({ length: 8 }, (_, index) => `wire,${48 + ((index * 3) % 7)}`).join('\n')}\n`

/** All of them, by the names that examples give them. */
export const SHOP_FILES = { 'times.csv': TIMES, 'stops.csv': STOPS, 'orders.csv': ORDERS, 'data/times.csv': DATA_TIMES }
export const SHOP_BYTES = { 'times.xlsx': TIMES_WORKBOOK }
