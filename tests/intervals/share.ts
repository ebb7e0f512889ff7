/** One process's share of the studies: its line, how many, and a seed, from the command line; the means on standard output, progress on standard error. */
import { studiesOf } from './coverage.ts'
import { LINES } from './lines.ts'

const [name, studies, seed] = process.argv.slice(2) as [string, string, string]
const sizes = [30, 50, 100]
const found = studiesOf(LINES[name]!(), { studies: Number(studies), sizes, seed }, (done) => {
  if (done % 50 === 0) process.stderr.write(`${name}: ${done} of ${studies} studies\n`)
})
process.stdout.write(JSON.stringify(found))
