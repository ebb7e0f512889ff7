/** What may be promised per shift and per week, what overtime does the plan take, and what limits the line? */
import { notebook } from '@loopwright/notebook'

const SHIFTS_PER_DAY = 2
const DAYS_PER_WEEK = 5

export default notebook(
  {
    title: 'Throughput forecast',
    scenario: '../scenarios/outdoor-unit-base-line.yaml',
    question: 'What throughput may be promised?',
  },
  async ({ forecast, losses, drivers, story, show, prose }) => {
    const result = await forecast({ shiftsPerWeek: SHIFTS_PER_DAY * DAYS_PER_WEEK, replications: 400 })
    const tale = story(result)
    show(tale.answer, tale.limits, ...tale.warnings)

    prose(`
    ## Units per shift and per week
    A week is ${SHIFTS_PER_DAY} shifts a day on ${DAYS_PER_WEEK} days: the units of ${result.shiftsPerWeek} simulated shifts, added up. Good and bad shifts
    level out in it, so that a week is steadier than its shifts; the chance of a week is never the chance of a shift multiplied.
  `)
    show(tale.table, tale.spread, tale.sure, tale.distribution, tale.weeks)

    if (tale.overtime !== null) {
      prose(`
      ## Overtime
      Each shift that falls short of the plan makes up what it lacks, at the rate of ${(result.overtime?.unitsPerMinute ?? 0).toFixed(2)} units a minute of
      net time. The minutes are taken shift by shift and then averaged: a mean output above the plan would say that there is none.
    `)
      show(tale.overtime)
    }

    const lost = story(await losses({ replications: 60 }))
    prose(`
    ## What is lost, and by what
    ${lost.answer.sentences.join(' ')}
  `)
    show(...lost.warnings, lost.chart, lost.sure, lost.together, tale.stops)

    const driven = story(await drivers({ replications: 40 }))
    prose(`
    ## What limits the line
    ${driven.answer.sentences.join(' ')}
  `)
    show(...driven.warnings, driven.chart, driven.sure, driven.wholes, driven.waiting)
    show(tale.stations, tale.byHour, tale.plan)

    show(...tale.assumptions)
    prose(`
    The shifts of a week are taken as independent of each other. What comes in weeks, such as absence, a supplier that fails or a new product,
    is not in them. Overtime is worked at the average rate, with the same people and the same stops.
  `)
    prose('## Cautions')
    show(...tale.cautions)
  },
)
