/** Judges the checks named on the command line one after the other; each verdict is written beside its place and renamed, so that nothing half-written stands there. */
import { renameSync, writeFileSync } from 'node:fs'
import { exactChecks } from '../oracle/exact/exactLoop.ts'
import { judge } from './judge.ts'

const [folder, ...ids] = process.argv.slice(2)
const checks = new Map(exactChecks(`${import.meta.dirname}/exact`).map((check) => [`${check.family} ${check.id}`, check]))
for (const id of ids) {
  const file = `${folder}/${encodeURIComponent(id)}.json`
  writeFileSync(`${file}.part`, JSON.stringify(judge(checks.get(id)!)))
  renameSync(`${file}.part`, file)
}
