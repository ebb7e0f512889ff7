/**
 * Every exactly known value that the model can express, with as many runs as show an error of 1 %: `npm run proof`. What is judged is kept under
 * `.loopwright/proof`, so that a proof that was stopped goes on where it was, as long as no byte of the engine has changed; `npm run proof -- --fresh` begins anew. Writes `out/proof.html`.
 */
import { type ChildProcess, spawn } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { writePage } from '@loopwright/notebook'
import { engineMark } from '@loopwright/study/machine'
import { exactChecks } from '../oracle/exact/exactCheck.ts'
import { groupsOf, type Verdict } from './judge.ts'
import { proofCells, proofSentences } from './proofPage.ts'

const FOLDER = `.loopwright/proof/${engineMark()}`
const OUT = 'out/proof.html'
const SHIFT = fileURLToPath(new URL('./shift.ts', import.meta.url))

if (process.argv.includes('--fresh')) rmSync(FOLDER, { recursive: true, force: true })
mkdirSync(FOLDER, { recursive: true })
const checks = exactChecks(`${import.meta.dirname}/exact`)
const lines = groupsOf(checks).map(([first]) => `${first!.family} ${first!.id}`)
const fileOf = (id: string): string => `${FOLDER}/${encodeURIComponent(id)}.json`
const open = lines.filter((id) => !existsSync(fileOf(id)))
const done = (): number => readdirSync(FOLDER).filter((name) => name.endsWith('.json')).length

const start = performance.now()
const workers = Math.max(1, Math.min(availableParallelism(), open.length))
const told = setInterval(() => {
  process.stderr.write(`${done()} of ${lines.length} lines judged, ${((performance.now() - start) / 1000).toFixed(0)} s\n`)
}, 10_000)
const waiting = [...open]
/** Hands the next line over; when there is none, the shift ends. */
function handOver(shift: ChildProcess): void {
  const id = waiting.shift()
  if (id === undefined) shift.disconnect()
  else shift.send(id)
}
const shifts = Array.from({ length: open.length === 0 ? 0 : workers }, () => {
  const shift = spawn(process.execPath, ['--import', 'tsx', '-C', 'loopwright-source', SHIFT, FOLDER], {
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  })
  shift.on('message', () => handOver(shift))
  handOver(shift)
  return shift
})
let stopped = false
process.on('SIGINT', () => {
  stopped = true
  for (const shift of shifts) shift.kill()
})
const codes = await Promise.all(shifts.map((shift) => new Promise<number | null>((resolve) => shift.on('exit', resolve))))
clearInterval(told)
const verdicts = lines.filter((id) => existsSync(fileOf(id))).flatMap((id) => JSON.parse(readFileSync(fileOf(id), 'utf8')) as Verdict[])
const failed = verdicts.filter(({ holds }) => !holds)
const { summary, sure } = proofSentences(verdicts, checks.length)
process.stdout.write(`${summary}\n${sure}\n`)
for (const { family, id, value, simulated } of failed) process.stdout.write(`DOES NOT HOLD: ${family} ${id}: ${simulated} for ${value}\n`)
if (!stopped) {
  const about = new Map(checks.map((check) => [check.family, check.about]))
  mkdirSync('out', { recursive: true })
  writeFileSync(
    OUT,
    await writePage(
      {
        question: 'Does the engine give the values that are exactly known?',
        scenarioName: 'Proof',
        date: new Date(),
        command: 'npm run proof',
      },
      proofCells(verdicts, checks.length, about),
    ),
  )
  process.stdout.write(`Page: ${OUT}\n`)
}
process.exitCode = stopped ? 130 : failed.length > 0 || codes.some((code) => code !== 0) ? 1 : 0
