import { readFileSync } from 'node:fs'
import { readScenario, resolveScenario, applyVariation, formatProblems } from './index.ts'
const t = readFileSync(process.argv[2]!, 'utf8')
const r = readScenario(t, 'x')
console.log(formatProblems(r.problems, t, process.argv[2]!))
if (process.argv[3] === 'v') console.log(applyVariation(t, process.argv[4]!).text)
if (process.argv[3] === 'r') console.log(resolveScenario(t, 'demo.yaml').text)
