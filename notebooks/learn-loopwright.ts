/** Twenty minutes with a small loop: what it makes, why, and what to touch to see it. */
import { lineAverages, notebook } from '@loopwright/notebook'

/** hours of a window of the small loop */
const HOURS = 8
const CHANCE = '40 s ± 40 %'
const STOP = { at: 'S4', after: 'exponential 30 min', lasts: 'exponential 3 min' }

export default notebook(
  { title: 'Learn loopwright', scenario: 'small-loop.yaml' },
  async ({ scenario, sweep, compare, grid, story, show, prose, chart, table, input }) => {
    input('carriers', { from: 1, to: 11, step: 1, label: 'Carriers on the loop' })
    input('S2.time', { from: 20, to: 80, step: 5, unit: 's', label: 'Assembly takes' })
    input('speed', { from: 6, to: 24, step: 1, unit: 'm/min', label: 'Speed of the drive' })

    const zones = scenario.line.zones.length
    const result = await sweep({ carriers: { from: 1, to: zones - 1 }, replications: 2 })
    const tale = story(result)
    const { law } = result
    if (law === null) throw new Error('this notebook is about one closed loop')
    const perHour = (seconds: number): string => (3600 / seconds).toFixed(0)
    show(tale.answer, tale.throughput, ...tale.warnings)

    prose(`
    ## One carrier
    The loop has ${zones} zones; each holds one carrier, which may go on when the next zone is free. A carrier that is alone goes
    round in ${law.lapSeconds.toFixed(0)} s, work at the four stations included, and brings one unit a lap: ${perHour(law.lapSeconds)} an hour.
    So each further carrier brings as much again, as long as none waits for another. That is the first branch of the law in the picture.

    **Touch**: set the carriers to one, then to two. The output doubles, exactly: nothing here is left to chance.
    **Ask yourself**: the drive twice as fast, does one carrier make twice as much? Try it, and look at how much of a lap is work.
  `)

    prose(`
    ## Enough carriers
    No station lets go of more than one carrier at a time. Between one and the next at the slowest station pass
    ${law.exchangeSeconds.toFixed(0)} s: its work, and the way of the next carrier in. That is ${perHour(law.exchangeSeconds)} units an hour, and from
    ${law.carriersLow} carriers on the loop makes them. More carriers then only wait in front of that station. That is the second branch, flat.

    **Touch**: let Assembly take less time, in small steps. The output rises until another station is the slowest one.
    **Ask yourself**: which one is it, and what does still less time at Assembly bring from there on?
  `)

    prose(`
    ## Too many carriers
    A carrier that goes on leaves a free zone behind, which travels the other way round. With every further carrier there are fewer of
    them; beyond ${law.carriersHigh} carriers they are what runs short, and the output falls: the third branch. With a carrier in every
    zone nothing can move at all.

    **Touch**: raise the carriers to the end of the slider, one by one.
  `)
    show(tale.choice, tale.stations, tale.plan)

    const chance = await grid({
      carriers: Array.from({ length: zones - 2 }, (_, index) => index + 1),
      set: { 'stations.S2.work.fit': ['40 s', CHANCE] },
      replications: 20,
    })
    const rows = chance.points.map(({ carriers, levels, units }) => ({
      carriers,
      units: mean(units) / HOURS,
      time: levels[1] === 0 ? 'always the same' : 'by chance',
    }))
    const gaps = rows.flatMap(({ carriers, units, time }) => {
      const same = rows.find((other) => other.carriers === carriers && other.time !== time)
      return time === 'by chance' && same !== undefined ? [{ carriers, gap: same.units - units }] : []
    })
    const most = gaps.reduce((best, each) => (each.gap > best.gap ? each : best))
    const last = gaps.at(-1)?.gap ?? 0
    prose(`
    ## Chance
    People are not clocks. Here Assembly takes the same time on average, once always the same and once by chance (\`${CHANCE}\`). On average
    nothing has changed, so that the law says the same; the output is not,
    most of all where branches meet: a slow unit makes the
    stations behind it wait, and a quick one cannot make up for it where no carrier stands ready.
  `)
    chart({
      x: 'carriers',
      y: 'units',
      series: 'time',
      rows,
      yTitle: 'Units per hour',
      xTitle: 'Carriers',
      finding: `With the same mean time, chance costs most with ${most.carriers} carriers: ${most.gap.toFixed(1)} units an hour; with the most carriers tried ${last.toFixed(1)}.`,
      howToRead: 'Points are means of simulated windows. The gap between the lines is what chance costs.',
    })

    const lines = {
      'as it is': scenario.with({ 'stations.S2.work.fit': CHANCE }),
      'with stops': scenario.with({ 'stations.S2.work.fit': CHANCE, 'stops.jam': STOP }),
      'with stops, fewer carriers': scenario.with({ 'stations.S2.work.fit': CHANCE, 'stops.jam': STOP, 'carriers.count': 4 }),
      'with stops, more carriers': scenario.with({ 'stations.S2.work.fit': CHANCE, 'stops.jam': STOP, 'carriers.count': 8 }),
    }
    const compared = await compare(lines, { replications: 30 })
    prose(`
    ## Stops, and carriers as a store
    Now Unload breaks down as well: on average after half an hour of work, for some minutes, though it is far from being the slowest. Each line below met the same ${compared.replications}
    windows: the same times, the same stops. So a difference is the lines' own, and few windows show it.
  `)
    const told = story(compared)
    show({ ...told.answer, id: 'stops-answer' }, ...told.warnings)
    table(
      compared.lines.map(({ name, units }) => ({ line: name, perHour: mean(units) / HOURS })),
      { caption: 'Units per hour', columns: { line: 'Line', perHour: 'Units per hour' }, decimals: 1 },
    )
    prose(`
    Carriers that wait in front of a station are a store: they keep it busy while something before it stands still. Free zones behind it are one
    as well: it can let go of what it has done while something after it stands still. More carriers make the first larger and the second
    smaller. Stops of the slowest station itself are lost, whatever waits.
  `)

    const averages = lineAverages(scenario)
    prose(`
    ## What to take away
    - Three limits, and the lowest counts: what carriers bring (a lap of ${averages.lapSeconds.toFixed(0)} s), what the slowest station lets go of (${averages.exchangeSeconds.toFixed(0)} s), what free zones allow. \`loopwright check\` says them for any line, and runs nothing.
    - Chance and stops take output away from all three, most where two of them meet. Only simulated shifts say how much.
    - A few carriers above the knee buy it back; many more cost it again.
    - To go on: \`loopwright new my-line\`, then \`loopwright carriers line.yaml\`.
  `)
    show(...tale.assumptions)
    prose('## Cautions')
    show(...tale.cautions)
  },
)

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
