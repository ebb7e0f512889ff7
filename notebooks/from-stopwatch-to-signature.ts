/**
 * From the stopwatch to the signature: a clipboard of times, a stop log and a list of orders, with the faults that real ones have, become a scenario whose
 * forecast knows what the data do not; then prices, criteria, a screening and the plan of the acceptance, up to the page for the signature. Tables and
 * decision file stand in notebooks/data; all numbers are invented.
 */
import { readFileSync } from 'node:fs'
import {
  assemble,
  mixStudy,
  readOrders,
  readStops,
  readTable,
  readTimes,
  redrawMix,
  redrawStops,
  redrawTimes,
  stopStudy,
  timeStudy,
  workingHours,
} from '@loopwright/measure'
import { notebook } from '@loopwright/notebook'
import { doubtStory, mixStory, stopLogStory, timesStory } from '@loopwright/notebook/data'
import { readScenario } from '@loopwright/scenario'
import { inputDoubt } from '@loopwright/study'

const file = (name: string): Uint8Array => readFileSync(new URL(`./data/${name}`, import.meta.url))
/** redrawn lines; more narrow the bands of the doubt */
const DRAWS = 24

export default notebook(
  { title: 'From the stopwatch to the signature', scenario: 'notebooks/data/complete.yaml' },
  async ({ scenario, forecast, decision, story, show, prose }) => {
    prose(`
    ## What was measured
    The tables are as they came: a title above the heads, a total row, a word among the numbers, a stop entered twice, one that ends before it starts.
    Every row that was not read is told below; nothing is taken out in silence.
  `)
    const times = readTimes(readTable(file('times.csv'), 'times.csv'))
    const studies = timeStudy(times.observations, { samples: 199 })
    const timed = timesStory([times], studies)
    show(
      timed.answer,
      ...timed.warnings,
      timed.tasks,
      timed.people,
      timed.sure,
      timed.choice,
      ...timed.charts,
      timed.read,
      ...timed.refused,
    )

    prose('## What stood')
    const hours = workingHours('06:00-14:00, 14:00-22:00')
    if (!hours.ok) throw new Error(hours.reason)
    const log = readStops(readTable(file('stops.csv'), 'stops.csv'))
    const week = { from: Date.UTC(2026, 10, 2, 6) / 1000, to: Date.UTC(2026, 10, 6, 22) / 1000, hours: hours.value }
    const stops = stopStudy(log.stops, week)
    const stood = stopLogStory([log], stops)
    show(stood.answer, ...stood.warnings, stood.places, stood.stops, stood.sure, stood.read, ...stood.refused)

    prose('## What is ordered')
    const orders = readOrders(readTable(file('orders.csv'), 'orders.csv'))
    const mix = mixStudy(orders.orders)
    const ordered = mixStory([orders], mix)
    show(ordered.answer, ...ordered.warnings, ordered.products, ordered.worst, ordered.levelled, ordered.read, ...ordered.refused)

    // the complete scenario beside the data is the one that they make now
    const skeleton = new TextDecoder().decode(file('skeleton.yaml'))
    const put = (of: Parameters<typeof assemble>[1]): string => {
      const { text, faults } = assemble(skeleton, of)
      if (text === null) throw new Error(faults.join('; '))
      return text
    }
    const named = { times: { file: 'times.csv' }, stops: 'stops.csv', mix: 'orders.csv' }
    const whole = put({
      times: { studies, source: named.times },
      stops: { study: stops, file: named.stops },
      mix: { study: mix, file: named.mix },
    })
    const made = readScenario(whole).scenario
    if (JSON.stringify(made?.line) !== JSON.stringify(scenario.line))
      throw new Error('the data have changed since complete.yaml was put together: put it together again (loopwright assemble)')

    prose(`
    ## What may be promised
    The forecast takes the scenario that these tables make of the skeleton. Below it stands what the data do not know.
  `)
    const result = await forecast({ shiftsPerWeek: 10, replications: 100 })
    const promised = story(result)
    const redrawn = Array.from({ length: DRAWS }, (_, draw) => {
      const [a, b, c] = [redrawTimes(studies, '1', draw), redrawStops(stops, '1', draw), redrawMix(mix, '1', draw)]
      const text = put({
        times: { studies: a.study, source: named.times },
        stops: { study: b.study, file: named.stops },
        mix: { study: { ...c.study, worst: [] }, file: named.mix },
      })
      return {
        line: readScenario(text).scenario!.line,
        levels: [...a.levels, ...b.levels, ...c.levels],
        inputs: [...a.inputs, ...b.inputs, ...c.inputs],
      }
    })
    const doubt = await inputDoubt(scenario.line, { redrawn }, { seed: '1', workers: 0 })
    const doubted = doubtStory(scenario, doubt, redrawn[0]!.inputs)
    show(promised.answer, ...promised.warnings, promised.table, promised.sure)
    show(doubted.answer, ...doubted.warnings, doubted.bands, doubted.inputs, doubted.sure)

    prose(`
    ## What it is worth
    The decision file beside the data holds what tables do not: alternatives, prices, workplaces. All of its lines are made of the scenario above and meet
    the same simulated shifts.
  `)
    const decided = await decision('data/pilot.decision.yaml', { replications: 40 })
    const worth = decided.payback()
    show(worth.answer, ...worth.warnings, worth.table, worth.worth, worth.naive)
    show(...worth.charts, worth.sure, worth.alternatives, worth.assumptions, worth.money)

    prose('## Which one the team favours')
    const weighed = decided.criteria()
    show(weighed.answer, weighed.matrix, weighed.wins, weighed.cases, weighed.sure, weighed.anchors)

    prose('## What needs a closer look')
    const screened = decided.screen()
    show(screened.answer, screened.caution, ...screened.compared, ...screened.notChecked, ...screened.measure, screened.reduction)

    prose('## How it will be accepted')
    const accepted = await decided.acceptance({ replications: 80 })
    show(accepted.answer, accepted.plan, accepted.looks, accepted.sure, accepted.practice)

    show(...promised.assumptions)
    prose('## Cautions')
    show(...promised.cautions)

    prose('## The page for the signature')
    const signed = await decided.promise()
    show({ ...signed.answer, lead: true }, signed.table, signed.ramp, signed.time, signed.pace, signed.rests, signed.sure, signed.mapping)
    prose(`
    Signed for the money: …………………………………… on ………………

    Signed for the people at the line, with the list of what was not checked: …………………………………… on ………………
  `)
  },
)
