/**
 * The decision that is told of a line: its own where the project has one, else between the line as it stands and its first variation.
 * Money and promises are by shifts: a line without any works two a day here, each of four hours.
 */
import { readdirSync, readFileSync } from 'node:fs'
import type { ToldLine } from './lines.ts'

const OWN = 'scenarios/base-line-decision'

/** The decision file first, then what it names. */
export function decisionFiles(line: ToldLine): Record<string, string> {
  if (line.name !== 'outdoor-unit-base-line') {
    const named = line.file.replace('.yaml', '')
    return { [`${named}.decision.yaml`]: decisionText(line), [`${named}.shift.yaml`]: inShifts(line) }
  }
  const names = readdirSync(OWN).sort()
  return { ...Object.fromEntries(names.map((name) => [`${OWN}/${name}`, readFileSync(`${OWN}/${name}`, 'utf8')])), [line.file]: line.text }
}

const inShifts = ({ text, scenario }: ToldLine): string =>
  scenario.calendar !== null
    ? text
    : text
        .replace(/^warmup: .*\n/m, '')
        .replace(/^length: .*$/m, 'calendar: { shift: { from: "06:00", to: "10:00", perDay: 2 }, judge: second shift }')

function decisionText({ name, written, scenario }: ToldLine): string {
  const [changed = null] = Object.keys(written.variations ?? {})
  if (changed === null) throw new Error(`"${name}" has no variation to decide about`)
  const netSeconds = scenario.calendar?.netSeconds ?? 4 * 3600
  const least = Math.floor(netSeconds / 240)
  return `format: 1
scenario: ${name}.shift.yaml
today: as it stands
alternatives:
  as it stands: { floor: 60 m² }
  ${changed}: { variation: ${changed}, investment: 60000 € ± 20 %, runningCost: 900 €/year, floor: 64 m² }
money: { wage: 36 €/h, crew: 5, daysPerYear: 220, shiftsPerDay: 2, years: 6, interest: 8 % }
screening: { mass: 45 kg, people: working, voltage: 24 V, push: { rolling: 0.02, starting: 0.03, speed: 15 m/min, within: 1 s, distance: 1.2 m, hands: knuckle to shoulder, floor: even, trapping: none } }
criteria:
  mustHaves: { fits the hall: { met: { as it stands: yes, ${changed}: yes } } }
  weigh:
    output: { weight: 60, from: output, one: ${least}, five: ${3 * least} }
    noise: { weight: 40, one: ear protection, five: a quiet voice is heard, scores: { as it stands: 4, ${changed}: 3 } }
acceptance: { of: ${changed}, lasts: 2 h, looks: 60 min }
promise: { of: ${changed}, shiftsPerDay: 2, until: people and products stay as they are, learning: { rate: 85 %, standardAfter: 600, weeks: 3 } }
`
}
