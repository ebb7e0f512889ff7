/** What one run of a line tells, in sentences. */
import { formatNumber, formatPerHour } from '@loopwright/charts/table'
import type { RunResult } from '@loopwright/line'
import type { AnswerFigure } from '../cells/cell.ts'
import type { Scenario } from '@loopwright/scenario'
import { carriersText } from '../sweep/answerWords.ts'
import { type Period, period } from '../sweep/period.ts'
import { counted } from '../words/countedWords.ts'
import { planText } from '../words/planWords.ts'
import { endSentence } from './endWords.ts'

/** "The plan of 320 was met. In this run 12 carriers made 333 units in the second shift, 39.9 per clock hour." */
export function runSentences(scenario: Scenario, run: RunResult): string[] {
  const { line, plan } = scenario
  const { named, each } = period(scenario)
  const made = `In this run ${carriersText(line.carriers.count)} made ${units(run.output)} ${named === null ? each : `in ${named}`}, ${formatPerHour(run.outputPerHour)} per clock hour.`
  const end = endSentence(run.end, line)
  return [
    ...(end === null ? [] : [end]),
    ...(plan === null ? [] : [planSentence(run.output, plan.unitsPerWindow)]),
    made,
    ...goodsSentences(run),
  ]
}

/** The same in a few large figures; none of a run that stood still. */
export function runFigures({ line, plan, ...scenario }: Scenario, run: RunResult): AnswerFigure[] {
  if (run.end.reason !== 'end of window') return []
  const { each } = period({ line, plan, ...scenario })
  const missed = plan === null ? 0 : Math.ceil(plan.unitsPerWindow - run.output)
  return [
    { label: `Units ${each}`, value: formatNumber(run.output, 0), sure: 'in this one run' },
    ...(plan === null
      ? []
      : [
          {
            label: `Plan of ${planText(plan.unitsPerWindow)} met`,
            value: missed > 0 ? 'no' : 'yes',
            sure: missed > 0 ? `missed by ${units(missed)}` : 'in this one run',
          },
        ]),
    { label: 'Units an hour', value: formatPerHour(run.outputPerHour), sure: 'of clock time' },
    { label: 'Carriers', value: formatNumber(line.carriers.count, 0), sure: '' },
  ]
}

/** Rejected products, and products that came in vain; nothing where there are none. */
function goodsSentences({ rejections, rejectedTakenOff, supplies }: RunResult): string[] {
  const off =
    rejectedTakenOff === 0
      ? ''
      : ` ${units(rejectedTakenOff)} left the line rejected, and ${rejectedTakenOff === 1 ? 'is' : 'are'} no output.`
  const rejected = rejections === 0 ? [] : [`Inspections rejected ${counted(rejections, 'time')}.${off}`]
  const away = supplies.filter(({ turnedAway }) => turnedAway > 0)
  return [
    ...rejected,
    ...away.map(
      ({ name, arrivals, turnedAway }) =>
        `Of ${formatNumber(arrivals, 0)} products that came to ${name === 'supply' ? 'the line' : name}, ${formatNumber(turnedAway, 0)} found the queue full and ${turnedAway === 1 ? 'was' : 'were'} turned away.`,
    ),
  ]
}

function planSentence(output: number, plan: number): string {
  const wanted = planText(plan)
  return output >= plan ? `The plan of ${wanted} was met.` : `The plan of ${wanted} was missed by ${units(Math.ceil(plan - output))}.`
}

const units = (count: number): string => counted(count, 'unit')

/** What one run does not tell. */
export function oneRunSentence({ one, many }: Pick<Period, 'one' | 'many'>): string {
  return `One run is one possible ${one}, and no forecast: --replications 100 shows what to expect and how much ${many} differ.`
}
