/** Runs one case in this process and prints its figures as one line of JSON. */
import { calibrate } from './calibrate.ts'
import { CASES } from './cases.ts'

const name = process.argv[2] ?? ''
const found = CASES[name]
if (found === undefined) throw new Error(`no case is called "${name}"; there are ${Object.keys(CASES).join(', ')}`)
const calibration = calibrate()
const figures = found.run()
console.log(JSON.stringify({ calibration, figures }))
