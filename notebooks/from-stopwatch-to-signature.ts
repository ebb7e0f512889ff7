/**
 * From the stopwatch to the signature: a clipboard of times, a stop log and a list of orders, with the faults that real ones have, become a scenario whose
 * forecast knows what the data do not. The tables stand in notebooks/data; all numbers are invented.
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
import { doubtStory, mixStory, notebook, stopLogStory, timesStory } from '@loopwright/notebook'
import { readScenario } from '@loopwright/scenario'
import { inputDoubt } from '@loopwright/study'

const file = (name: string): Uint8Array => readFileSync(new URL(`./data/${name}`, import.meta.url))
/** redrawn lines; more narrow the bands of the doubt */
const DRAWS = 24

export default notebook(
  { title: 'From the stopwatch to the signature', scenario: 'notebooks/data/complete.yaml' },
  async ({ scenario, forecast, story, show, prose }) => {
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
    const doubt = await inputDoubt(scenario.line, redrawn, {}, { seed: '1', workers: 0 })
    const doubted = doubtStory(scenario, doubt, redrawn[0]!.inputs)
    show(promised.answer, ...promised.warnings, promised.table, promised.sure)
    show(doubted.answer, ...doubted.warnings, doubted.bands, doubted.inputs, doubted.sure)

    show(...promised.assumptions)
    prose('## Cautions')
    show(...promised.cautions)
  },
)
