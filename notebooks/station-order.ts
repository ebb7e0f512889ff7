/** Does another station order help the base line, and does a proposal that looks as good on paper make as much? */
import { lineAverages, notebook } from '@loopwright/notebook'

export default notebook(
  {
    title: 'Station order',
    scenario: '../scenarios/outdoor-unit-base-line.yaml',
    question: 'Does another order of the stations make more?',
  },
  async ({ scenario, moved, compare, order, story, show, prose }) => {
    const lines = {
      'today’s order': scenario,
      'fan deck beside wiring': moved({ S5: 'Z14' }),
      'all three side by side': moved({ S5: 'Z14', S6: 'Z15' }),
    }
    const compared = await compare(lines, { replications: 100 })
    const tale = story(compared)
    const chosen = await order({
      move: ['S4', 'S5'],
      before: [['S4', 'S5']],
      zones: ['Z10', 'Z12', 'Z13', 'Z14', 'Z15', 'Z16'],
      replications: 60,
    })
    const orders = story(chosen)
    show(
      { ...orders.answer, sentences: [...orders.answer.sentences, ...tale.answer.sentences] },
      ...orders.warnings,
      ...tale.warnings,
      tale.differences,
      tale.table,
      tale.sure,
    )

    const today = lineAverages(scenario)
    const proposals = Object.entries(lines).slice(1)
    const asGood = proposals.filter(([, proposal]) => {
      const { lapSeconds, exchangeSeconds, holeLapSeconds, unitsPerWindow } = lineAverages(proposal)
      return (
        lapSeconds <= today.lapSeconds &&
        exchangeSeconds <= today.exchangeSeconds &&
        holeLapSeconds <= today.holeLapSeconds &&
        unitsPerWindow >= today.unitsPerWindow
      )
    })
    prose(`
    ## What averages say
    ${count(asGood.length, proposals.length)} as good as today’s order or better, by every term that averages have: the lap of a carrier
    (${today.lapSeconds.toFixed(1)} s today), the slowest exchange (${today.exchangeSeconds.toFixed(1)} s), the lap of a
    free zone (${today.holeLapSeconds.toFixed(1)} s). Every station keeps its times, so that its mean cycle stays what it is.
  `)
    show(tale.averages, tale.changed)

    const losers = compared.pairs
      .filter(({ second, difference }) => second === 0 && difference.high < 0)
      .map(({ first }) => compared.lines[first]?.name ?? '')
      .filter((name) => asGood.some(([each]) => each === name))
    const verdict =
      losers.length === 0
        ? 'None of them is shown to make less than today’s order'
        : `Of these, ${list(losers.map((name) => `“${name}”`))} ${losers.length === 1 ? 'makes' : 'make'} less than today’s order`
    prose(`
    ## What the same shifts say
    ${verdict} in simulated shifts that met the same products, the same task times and the same stops. Averages do not see the zones between two
    stations: a station that is done early needs an empty zone to let go of its carrier, one that waits needs a carrier that has already come
    near. Without such zones each of the two passes on the other’s bad moments.
  `)

    const moving = scenario.line.stations.filter(({ name }) => ['S4', 'S5'].includes(name))
    prose(`
    ## Which places, if two stations may move?
    ${list(moving.map(({ title }) => title))} may take any of the zones between the joining and the test, one before the other.
  `)
    show(orders.table, orders.sure, ...orders.plans, tale.units, orders.units)

    show(...tale.assumptions)
    prose('## Cautions')
    show(...tale.cautions)
  },
)

/** "Both proposals are", "One of three proposals is" */
function count(some: number, all: number): string {
  if (some === 0) return `None of the ${all} proposals is`
  if (some === all) return all === 1 ? 'The proposal is' : all === 2 ? 'Both proposals are' : `All ${all} proposals are`
  return `${some} of ${all} proposals ${some === 1 ? 'is' : 'are'}`
}

function list(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`
}
