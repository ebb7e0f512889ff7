/**
 * Runs in a process of its own: checks one number after another until the time is over, so many are checked or something is found; tells it as one line of JSON.
 * Its words: seconds, most cases, seed, folder of scenarios, `as found` where a line that is found need not be made small, and the one kind of case that is checked, all where there is no word of it.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { check, type Finding, KINDS, type Kind } from './checks.ts'

export interface ShiftReport {
  readonly checked: Readonly<Record<Kind, number>>
  readonly seconds: number
  /** null: nothing was found */
  readonly found: (Finding & { readonly kind: Kind; readonly number: number }) | null
}

const [seconds, cases, seed] = process.argv.slice(2, 5).map(Number) as [number, number, number]
const folder = process.argv[5]!
const only = process.argv[7]
const scenarios = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => readFileSync(`${folder}/${name}`, 'utf8'))
const checked: Record<Kind, number> = {
  'a loop against the reading aloud': 0,
  'a general line against the reading aloud': 0,
  'any line': 0,
  'a wrong scenario': 0,
}
const start = performance.now()
const passed = (): number => (performance.now() - start) / 1000
let found: ShiftReport['found'] = null
let told = 0
for (let index = 0; found === null && index < cases && passed() < seconds; index++) {
  const kind = KINDS[index % KINDS.length]!
  if (only !== undefined && kind !== only) continue
  const number = (seed * 1_000_003 + index) % 2_147_483_647
  const finding = check(kind, number, scenarios, process.argv[6] !== 'as found')
  checked[kind]++
  if (finding !== null) found = { ...finding, kind, number }
  if (passed() - told > 10) {
    told = passed()
    process.stderr.write(`${told.toFixed(0)} of ${seconds} s: ${index + 1} checked, nothing found\n`)
  }
}
const report: ShiftReport = { checked, seconds: passed(), found }
process.stdout.write(`${JSON.stringify(report)}\n`)
