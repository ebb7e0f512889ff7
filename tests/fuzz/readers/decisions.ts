/** Decision files: their reader, and what each of their commands tells of one. */
import { readDecision } from '@loopwright/decide'
import { decisionOf } from '../../helpers/decisionText.ts'
import { RING } from '../../helpers/scenarioTexts.ts'
import { mutated, one } from '../mutated.ts'
import { plain, type Reader } from '../reader.ts'
import { commandOn, FILES } from './commands.ts'
import { problemFaults } from './scenarios.ts'

const LONG = `format: 1
question: Is a faster drive worth its price?
scenario: ring.yaml
today: as it is
alternatives:
  as it is: {}
  faster: { set: { drive.speed: 24 m/min }, investment: 20000..30000 €, change: { downtime: 2 shifts } }
  other: { file: open.yaml, investment: 5000 € }
money:
  wage: 30..45 €/h
  crew: 8
  daysPerYear: 230
  shiftsPerDay: 2
  years: 7
  interest: 10 %
  output: { worth: 40 €/unit, sold: 400 per shift }
screening:
  mass: 115 kg
  people: working
  voltage: 24 V
  walks: { weld: { perUnit: 4 m, measured: tape } }
  ownCopy: { walk: { value: 5000 m, source: rule of our plant } }
criteria:
  mustHaves: { makes it: { planMetIn: 50 % } }
  weigh:
    output: { weight: 60, from: output, one: 1, five: 100 }
    room: { weight: 40, scores: { as it is: 3, faster: 3..5, other: 2 } }
acceptance: { lasts: 1 h, looks: 20 min }
promise: { shiftsPerDay: 2, until: nothing changes, learning: { rate: 85 %, standardAfter: 200, weeks: 2 } }
`
const TEXTS = [decisionOf('ring.yaml'), decisionOf('line.yaml'), LONG]

export const decisionFile: Reader = plain(TEXTS, (text) => {
  const { decision, problems } = readDecision(text)
  return problemFaults(text, problems, decision !== null)
})

const COMMANDS = [
  ['payback'],
  ['criteria'],
  ['screen', '--csv', 'tables'],
  ['promise', '--out', 'page.html'],
  ['acceptance'],
  ['trial', '--counts', '9,21'],
  ['followup', '--weeks', 'weeks.csv', '--write', 'now.yaml'],
] as const

/** Spoilt in its file, in the scenario behind it, or in the weeks that were counted. */
export const whatIsDecided: Reader = {
  texts: [JSON.stringify({ command: 0, files: {} })],
  every: 30,
  spoil(whole) {
    const command = whole(COMMANDS.length)
    const file = one(['line.decision.yaml', 'line.decision.yaml', 'ring.yaml', 'weeks.csv'], whole)
    const text = file === 'line.decision.yaml' ? one(TEXTS, whole) : FILES[file]!
    return JSON.stringify({ command, files: { [file]: mutated(text, [text, RING], whole) } })
  },
  async try(text) {
    const { command, files } = JSON.parse(text) as { command: number; files: Record<string, string> }
    const [name, ...more] = COMMANDS[command]!
    const replications = name === 'promise' || name === 'followup' ? '12' : name === 'acceptance' || name === 'trial' ? '40' : '2'
    const { fault, files: written } = await commandOn([name, 'line.decision.yaml', ...more, '--replications', replications], {
      ...FILES,
      ...files,
    })
    const strange = [...written.keys()].find(
      (file) => !Object.hasOwn(FILES, file) && !/^(?:tables\/[\w.-]+\.csv|page\.html|now\.yaml)$/.test(file),
    )
    return fault ?? (strange === undefined ? null : `"${strange}" was written`)
  },
}
