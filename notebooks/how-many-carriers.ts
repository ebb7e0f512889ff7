/** How many carriers does the base line need, and what will it make per shift? */
import { notebook } from '@loopwright/notebook'

export default notebook(
  { title: 'How many carriers', scenario: '../scenarios/outdoor-unit-base-line.yaml' },
  async ({ carriers, story, show, prose }) => {
    const result = await carriers()
    const tale = story(result)
    const { law } = result
    if (law === null) throw new Error('this notebook is about one closed loop')

    show(tale.answer, tale.promise, tale.limits, ...tale.warnings)

    prose(`
    ## Output by number of carriers
    One carrier alone needs ${(law.lapSeconds / 60).toFixed(1)} min for a lap. Up to ${law.carriersLow} carriers the loop makes what its carriers
    bring; from there the slowest exchange decides (${law.exchangeSeconds.toFixed(1)} s from one carrier to the next); beyond ${law.carriersHigh}
    carriers empty zones run short. These three limits know no stops and no chance: the simulated points lie below them.
  `)
    show(tale.throughput, tale.sure)

    prose(`
    ## A closer look at one count
    Too few carriers show as stations that wait for one (starved), too many as stations that cannot let go of theirs (blocked).
  `)
    show(tale.choice, tale.stations, tale.plan, tale.occupancy, tale.byHour, tale.distribution, tale.stops, tale.units)

    show(...tale.assumptions)
    prose('## Cautions')
    show(...tale.cautions)
  },
)
