/** `npm run faults -- --jobs 10000 --faults 30 --seed 1`: studies under faults; the log becomes faults.md beside this file. */
import { writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { faultPage } from './faultPage.ts'
import { KINDS, survive } from './survive.ts'

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: '1' },
    jobs: { type: 'string', default: '10000' },
    faults: { type: 'string', default: '30' },
    workers: { type: 'string', default: '2' },
    replications: { type: 'string', default: '16700' },
    page: { type: 'boolean', default: false },
  },
})
const plan = { seed: values.seed, jobs: Number(values.jobs), faults: Number(values.faults), workers: Number(values.workers) }
process.stdout.write(`${JSON.stringify(plan)}\n`)
const survived = await survive({
  ...plan,
  replications: Number(values.replications),
  kinds: KINDS,
  everySeconds: 8,
  say: (line) => process.stdout.write(`${line}\n`),
})
const page = faultPage(plan, survived)
if (values.page) writeFileSync(new URL('./faults.md', import.meta.url), page)
process.stdout.write(page)
process.exitCode = survived.studies.every(({ same }) => same) && survived.twice === 0 && survived.missing === 0 ? 0 : 1
