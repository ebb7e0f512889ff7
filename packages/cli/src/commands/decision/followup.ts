import { followUp, stationDeviations, type StopDeviation, stopDeviations, waitDeviations } from '@loopwright/decide'
import { writeScenario } from '@loopwright/scenario'
import { longerWork, meetsPlan, otherStops, recalibrate } from '@loopwright/study'
import type { FollowUpRuns } from '@loopwright/notebook'
import { followUpDocument } from '../../documents/decision/followUpDocument.ts'
import { openStore } from '../../keptRuns.ts'
import { chosenBy, shiftRuns } from '../../meetingRuns.ts'
import { stationsOfCsv, stopsOfCsv, waitsOfCsv, weeksOfCsv } from '../../options/countedWeeks.ts'
import type { Loaded } from '../../loadScenario.ts'
import { tell } from '../../output/tell.ts'
import { checkOutputs } from '../../output/writeTables.ts'
import { Misuse, refusals, type Shell } from '../../shell/shell.ts'
import { refused, type StudyFlags } from '../../studyCommand.ts'
import { threadsOf } from '../../threads.ts'

export interface FollowUpFlags extends StudyFlags {
  /** table of weeks: week, units, shifts */
  readonly weeks: string
  /** table of measured stations: station, seconds, n, sd; perhaps blocked and starved */
  readonly stations?: string
  /** table of counted stops: stop, count, minutes, shifts */
  readonly stops?: string
  /** where the recalibrated scenario goes */
  readonly write?: string
}

/** windows of each step of the search for a factor */
const STEP_REPLICATIONS = 30

/** Real weeks against the forecast: whether the promise still stands, what to measure again, the line with what was learned. */
export async function followup(shell: Shell, file: string, flags: FollowUpFlags, command: string): Promise<number> {
  const { name, source } = await chosenBy(shell, file, 'promise')
  const { scenario } = source
  if (scenario.calendar?.shifts !== 1)
    throw new Misuse(`weeks are counted by shifts: "${scenario.name}" needs a calendar that judges one shift`)
  const weeks = weeksOfCsv(await shell.readFile(flags.weeks), flags.weeks)
  const table = flags.stations === undefined ? null : await shell.readFile(flags.stations)
  const measured = table === null ? null : stationsOfCsv(table, flags.stations!)
  const waited = table === null ? [] : waitsOfCsv(table, flags.stations!)
  const counted = flags.stops === undefined ? null : stopsOfCsv(await shell.readFile(flags.stops), flags.stops)
  await checkOutputs(shell, flags)
  if (flags.write !== undefined) await shell.checkWritable(flags.write)
  const sweep = await shiftRuns(shell, source, flags, 'what the forecast was')
  const { stopCauses, workSeconds } = await import('@loopwright/notebook')
  const work = workSeconds(scenario)
  const model = new Map(scenario.line.stations.map((station, index) => [station.name, work[index]!]))
  const [count] = sweep.counts
  const result = refusals(() => followUp(weeks, count!.units, flags.seed))
  const stations = measured === null ? null : refusals(() => stationDeviations(measured, model))
  const waits = refusals(() =>
    waitDeviations(waited, (name, state) => count!.stations.find((station) => station.name === name)?.shares[state] ?? null),
  )
  const ownStops = count!.stoppedBy.filter(({ cause }) => cause !== 'break')
  const causes = stopCauses(scenario, ownStops).map(({ cause, count: times, seconds }) => ({
    stop: cause,
    count: times,
    minutes: seconds / 60,
  }))
  const stops = counted === null ? null : refusals(() => stopDeviations(counted, causes))
  const changed = changedStops(stops ?? [], scenario.stopEntries)
  const other = new Map((stations ?? []).filter(({ differs }) => differs).map(({ station, ratio }) => [station, ratio]))
  const options = { seed: flags.seed, store: await openStore(shell, flags), signal: shell.signal, ...threadsOf(flags, shell) }
  const known = other.size > 0 || changed.size > 0
  const needed = result.state === 'in doubt' || result.state === 'no longer stands' || result.above || known
  const factor =
    needed && !known ? await refused(recalibrate(scenario.line, result.realMean, { replications: STEP_REPLICATIONS }, options)) : null
  const line =
    needed && (factor === null || factor.found)
      ? otherStops(longerWork(scenario.line, factor === null ? other : factor.factor), changed)
      : null
  const again =
    line === null ? null : await shiftRuns(shell, { scenario: { ...scenario, line } }, flags, 'what the recalibrated line makes')
  if (line !== null && flags.write !== undefined) await shell.writeFile(flags.write, writeScenario({ ...scenario, line }))
  const plan = scenario.plan?.unitsPerWindow ?? null
  const units = again?.counts[0]?.units
  const runs: FollowUpRuns = {
    kind: 'follow-up',
    name,
    result,
    stations,
    stops,
    waits,
    factor,
    recalibrated: units === undefined ? null : { units, meetsPlan: meetsPlan(units, plan) },
    plan,
    written: line !== null && flags.write !== undefined ? flags.write : null,
  }
  return await tell(shell, flags, {
    partial: sweep.partial,
    document: () => followUpDocument(file, runs),
    tale: async () => {
      const { followUpStory, simulatedCell } = await import('@loopwright/notebook')
      const { question, cells } = followUpStory(runs)
      return { question, cells: [...cells, simulatedCell('simulated', scenario, source.file, sweep, 'The line of the forecast', 'one')] }
    },
    name: scenario.name,
    command,
  })
}

/** Factors on time between and on repair of the breakdown sources behind the stops that differ. */
function changedStops(
  stops: readonly StopDeviation[],
  entries: Loaded['scenario']['stopEntries'],
): ReadonlyMap<string, { readonly between: number; readonly repair: number }> {
  return new Map(
    stops
      .filter(({ countDiffers, lengthDiffers }) => countDiffers || lengthDiffers)
      .flatMap(({ stop, countDiffers, countRatio, lengthDiffers, lengthRatio }) => {
        // a stop that was never counted keeps its time between: how rare it is, nobody knows yet
        const between = countDiffers && countRatio !== null && countRatio > 0 ? 1 / countRatio : 1
        const repair = lengthDiffers && lengthRatio !== null ? lengthRatio : 1
        const sources = entries.filter(({ title }) => title === stop).flatMap((entry) => entry.sources)
        return sources.map(({ source }) => [source, { between, repair }] as const)
      }),
  )
}
