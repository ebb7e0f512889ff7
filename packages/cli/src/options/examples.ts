/** Examples in the help of each command, at least two each. A test types them all, on the scenarios that are there. */
export const EXAMPLES = {
  '': ['check line.yaml', 'carriers line.yaml --out out/carriers.html --open'],
  check: ['check line.yaml', 'check line.yaml --variation train --out out/check.html'],
  times: [
    'times times.csv',
    'times times.xlsx --sheet Monday --allowance 10 --breaks calendar',
    'times times.csv --write tasks.yaml --out out/times.html',
  ],
  stoplog: ['stoplog stops.csv', 'stoplog stops.csv --hours "Mon-Fri 06:00-14:20" --write stops.yaml'],
  mix: ['mix orders.csv', 'mix orders.csv --round 12 --write products.yaml'],
  assemble: ['assemble line.yaml --data data', 'assemble line.yaml --data data --write complete.yaml'],
  resolve: ['resolve line.yaml > complete.yaml', 'resolve line.yaml --variation train'],
  schema: ['schema > scenario.schema.json', 'schema --of sweep'],
  run: ['run line.yaml', 'run line.yaml --json --trace > run.json', 'run line.yaml --replications 100 --out out/run.html'],
  trace: [
    'trace line.yaml --station S6 --from "1 h" --to "1.2 h"',
    'trace line.yaml --carrier 3',
    'trace line.yaml --from "9 h" --to "9.25 h" --out out/trace.html',
    'trace line.yaml --json > events.ndjson',
  ],
  steady: ['steady line.yaml', 'steady line.yaml --runs 20 --out out/steady.html'],
  carriers: ['carriers line.yaml', 'carriers line.yaml --within 2 --out out/carriers.html', 'carriers line.yaml --json > carriers.json'],
  sweep: [
    'sweep line.yaml --carriers 5..18',
    'sweep line.yaml --replications 200 --seed 7 --out out/sweep.html',
    'sweep line.yaml --csv out/tables --csv-style semicolon',
  ],
  forecast: ['forecast line.yaml', 'forecast line.yaml --shifts-per-week 10 --out out/week.html'],
  compare: [
    'compare today.yaml proposal.yaml',
    'compare line.yaml --variations',
    'compare line.yaml --variations train --out out/compare.html',
    'compare line.yaml --set "fast: drive.speed=18 m/min" --base fast',
  ],
  grid: [
    'grid line.yaml --carriers 10..12 --set "drive.speed=12,15 m/min"',
    'grid line.yaml --carriers 8,10 --set "drive.release=single,train"',
  ],
  order: ['order line.yaml --move S4,S5,S6 --zones Z13..Z18 --before "S4<S6"', 'order line.yaml --move S5 --try "S5@Z14"'],
  drivers: ['drivers line.yaml', 'drivers line.yaml --replications 60 --out out/drivers.html'],
  losses: ['losses line.yaml', 'losses line.yaml --variation train'],
  balance: ['balance tasks.csv --cycle 60', 'balance line.yaml --stations 5'],
  work: ['work --queue redis://plant-server', 'work --queue rediss://plant-server:6380 --workers 8 --idle 60'],
  queue: ['queue info --queue redis://plant-server', 'queue cancel --queue redis://plant-server'],
  'queue info': ['queue info --queue redis://plant-server', 'queue info --queue redis://127.0.0.1:6379/1'],
  'queue cancel': ['queue cancel --queue redis://plant-server', 'queue cancel --queue redis://127.0.0.1'],
  'queue retry': ['queue retry --queue redis://plant-server', 'queue retry --queue redis://127.0.0.1'],
  payback: ['payback line.decision.yaml', 'payback line.decision.yaml --out out/payback.html'],
  criteria: ['criteria line.decision.yaml', 'criteria line.decision.yaml --out out/criteria.html'],
  promise: ['promise line.decision.yaml', 'promise line.decision.yaml --out out/promise.html'],
  acceptance: ['acceptance line.decision.yaml', 'acceptance line.decision.yaml --json > acceptance.json'],
  trial: ['trial line.decision.yaml --counts 19,41', 'trial line.decision.yaml --counts 19,41,62 --out out/trial.html'],
  followup: ['followup line.decision.yaml --weeks weeks.csv', 'followup line.decision.yaml --weeks weeks.csv --write now.yaml'],
  screen: ['screen line.decision.yaml', 'screen line.decision.yaml --csv out/tables'],
  store: ['store info', 'store merge part-1 part-2', 'store prune'],
  'store info': ['store info', 'store info --store elsewhere'],
  'store merge': ['store merge part-1 part-2 part-3', 'store merge /net/line/part-* --store all'],
  'store prune': ['store prune', 'store prune --older-than 30'],
  new: ['new pilot', 'new lines/second-pilot'],
  notebook: [
    'notebook notebooks/how-many-carriers.ts',
    'notebook notebooks/how-many-carriers.ts --replications 20 --open',
    'notebook notebooks/how-many-carriers.ts --watch --open',
  ],
} as const satisfies Readonly<Record<string, readonly [string, string, ...string[]]>>

/** As the help of a command shows them; '' where it has none. */
export function examplesOf(command: string): string {
  const found = (EXAMPLES as Readonly<Record<string, readonly string[]>>)[command] ?? []
  return found.length === 0 ? '' : `\nExamples:\n${found.map((line) => `  loopwright ${line}`).join('\n')}`
}
