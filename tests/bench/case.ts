/** Runs one job in this process and prints its figures as one line of JSON: `case.ts small/events [share of the work]`. */
import { calibrate } from './calibrate.ts'
import { CASES } from './cases.ts'
import { GROWTH } from './growth.ts'

const ALL = { ...CASES, ...GROWTH }

const [name = '', part = ''] = (process.argv[2] ?? '').split('/')
const run = ALL[name]?.parts[part]
if (run === undefined) throw new Error(`no job is called "${name}/${part}"; there are ${Object.keys(ALL).join(', ')}, each with its parts`)
const before = calibrate()
const figures = await run(Number(process.argv[3] ?? 1))
const peak = ALL[name]!.elsewhere ? {} : { peakMegabytes: process.resourceUsage().maxRSS / 1024 }
console.log(JSON.stringify({ calibration: (before + calibrate()) / 2, figures: { ...figures, ...peak } }))
