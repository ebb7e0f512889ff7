/** Runs one job in this process and prints its figures as one line of JSON: `case.ts small/events [share of the work]`. */
import { calibrate } from './calibrate.ts'
import { CASES, type Part } from './cases.ts'
import { GROWTH } from './growth.ts'
import { NATIVE } from './native/cases.ts'

const ALL = { ...CASES, ...GROWTH, ...NATIVE }

const [name = '', part = ''] = (process.argv[2] ?? '').split('/')
const run = ALL[name]?.parts[part]
if (run === undefined) throw new Error(`no job is called "${name}/${part}"; there are ${Object.keys(ALL).join(', ')}, each with its parts`)
const { elsewhere } = ALL[name]!

async function tell(work: Part): Promise<void> {
  const before = calibrate()
  const figures = await work(Number(process.argv[3] ?? 1))
  const peak = elsewhere ? {} : { peakMegabytes: process.resourceUsage().maxRSS / 1024 }
  console.log(JSON.stringify({ calibration: (before + calibrate()) / 2, figures: { ...figures, ...peak } }))
}

void tell(run)
