/** Judges the lines that are handed over, named by their first check, one after the other; each answer is written beside its place and renamed, so that nothing half-written stands there. */
import { renameSync, writeFileSync } from 'node:fs'
import { exactChecks } from '../oracle/exact/exactCheck.ts'
import { groupsOf, judge } from './judge.ts'

const folder = process.argv[2]
const groups = new Map(groupsOf(exactChecks(`${import.meta.dirname}/exact`)).map((group) => [`${group[0]!.family} ${group[0]!.id}`, group]))
process.on('message', (id: string) => {
  const file = `${folder}/${encodeURIComponent(id)}.json`
  writeFileSync(`${file}.part`, JSON.stringify(judge(groups.get(id)!)))
  renameSync(`${file}.part`, file)
  process.send!(id)
})
