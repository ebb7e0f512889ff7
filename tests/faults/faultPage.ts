/** The log of a run under faults as a page. */
import type { Survived } from './survive.ts'

export interface Asked {
  readonly seed: string
  readonly jobs: number
  readonly faults: number
  readonly workers: number
}

export function faultPage(asked: Asked, { faults, studies, jobs, seconds, twice, missing }: Survived): string {
  const same = studies.filter((one) => one.same).length
  const kinds = [...new Set(faults.map(({ kind }) => kind))]
  const count = (kind: string): number => faults.filter((one) => one.kind === kind).length
  return `# Studies under faults

Made by \`npm run faults -- --seed ${asked.seed} --jobs ${asked.jobs} --faults ${asked.faults} --workers ${asked.workers} --page\`. Each study is a sweep as it is typed, by a queue on a real server behind a way that the test cuts; what it prints is compared with what one machine prints.

| what | count |
| --- | --- |
| studies | ${studies.length} |
| of them with the same bytes as one machine | ${same} |
| jobs | ${jobs} |
| replications | ${studies.reduce((sum, one) => sum + one.replications, 0)} |
| faults | ${faults.length} |
| replications kept twice | ${twice} |
| replications missing between two that are kept | ${missing} |
| seconds | ${seconds.toFixed(0)} |

| kind of fault | times |
| --- | --- |
${kinds.map((kind) => `| ${kind} | ${count(kind)} |`).join('\n')}

## Studies

| seed | jobs | started | bytes |
| --- | --- | --- | --- |
${studies.map((one) => `| ${one.seed} | ${one.jobs} | ${one.starts} times | ${one.same ? 'the same' : '**others**'} |`).join('\n')}

## Faults

| second | kind | what |
| --- | --- | --- |
${faults.map(({ atSeconds, kind, what }) => `| ${atSeconds.toFixed(1)} | ${kind} | ${what} |`).join('\n')}
`
}
