import { followUp, stationDeviations } from '@loopwright/decide'
import { writeScenario } from '@loopwright/scenario'
import { longerWork, meetsPlan, recalibrate } from '@loopwright/study'
import type { FollowUpRuns } from '@loopwright/notebook'
import { followUpDocument } from '../../documents/decision/followUpDocument.ts'
import { chosenBy, shiftRuns } from '../../meetingRuns.ts'
import { stationsOfCsv, weeksOfCsv } from '../../options/countedWeeks.ts'
import { tell } from '../../output/tell.ts'
import { checkOutputs } from '../../output/writeTables.ts'
import { refusals, type Shell } from '../../shell/shell.ts'
import { refused, type StudyFlags } from '../../studyCommand.ts'
import { threadsOf } from '../../threads.ts'

export interface FollowUpFlags extends StudyFlags {
  /** table of weeks: week, units, shifts */
  readonly weeks: string
  /** table of measured stations: station, seconds, n, sd */
  readonly stations?: string
  /** where the recalibrated scenario goes */
  readonly write?: string
}

/** windows of each step of the search for a factor */
const STEP_REPLICATIONS = 30

/** Real weeks against the forecast: whether the promise still stands, what to measure again, the line with what was learned. */
export async function followup(shell: Shell, file: string, flags: FollowUpFlags, command: string): Promise<number> {
  const { name, source } = await chosenBy(shell, file, 'promise')
  const weeks = weeksOfCsv(await shell.readFile(flags.weeks), flags.weeks)
  const measured = flags.stations === undefined ? null : stationsOfCsv(await shell.readFile(flags.stations), flags.stations)
  await checkOutputs(shell, flags)
  if (flags.write !== undefined) await shell.checkWritable(flags.write)
  const sweep = await shiftRuns(shell, source, flags, 'what the forecast was')
  const { scenario } = source
  const { workSeconds } = await import('@loopwright/notebook')
  const work = workSeconds(scenario)
  const model = new Map(scenario.line.stations.map((station, index) => [station.name, work[index]!]))
  const result = refusals(() => followUp(weeks, sweep.counts[0]!.units, flags.seed))
  const stations = measured === null ? null : refusals(() => stationDeviations(measured, model))
  const other = new Map((stations ?? []).filter(({ differs }) => differs).map(({ station, ratio }) => [station, ratio]))
  const options = { seed: flags.seed, signal: shell.signal, ...threadsOf(flags, shell) }
  const needed = result.state === 'in doubt' || result.state === 'no longer stands' || other.size > 0
  const factor =
    needed && other.size === 0
      ? await refused(recalibrate(scenario.line, result.realMean, { replications: STEP_REPLICATIONS }, options))
      : null
  const line = needed && (factor === null || factor.found) ? longerWork(scenario.line, factor === null ? other : factor.factor) : null
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
      return { question, cells: [...cells, simulatedCell('simulated', scenario, source.file, sweep, 'The line of the forecast')] }
    },
    name: scenario.name,
    command,
  })
}
