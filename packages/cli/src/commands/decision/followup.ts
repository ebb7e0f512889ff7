import type { LineSpec } from '@loopwright/line'
import { SHIFTS_LEAST } from '@loopwright/decide/acceptance'
import { followUpOf, followUpStory, needsShift, stopNames } from '@loopwright/notebook/decision'
import { writeScenario } from '@loopwright/scenario'
import { recalibrate } from '@loopwright/study/trials'
import { followUpDocument } from '../../documents/decision/followUpDocument.ts'
import { openStore } from '../../keptRuns.ts'
import { atLeast, chosenBy, shiftRuns } from '../../meetingRuns.ts'
import { stationsOfCsv, stopsOfCsv, waitsOfCsv, weeksOfCsv } from '../../options/countedWeeks.ts'
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
  const { name, source, loaded } = await chosenBy(shell, file, 'promise')
  if (loaded.decision.promise!.shifts !== null)
    throw new Misuse(
      `the shifts of ${file} differ, and weeks are followed up for shifts that are alike: write a decision file for each kind, with "shiftsPerDay: 1", and count its weeks by themselves`,
    )
  const { scenario } = source
  refusals(() => needsShift(scenario, 'weeks are counted'))
  atLeast(SHIFTS_LEAST, 'shifts', flags)
  const weeks = weeksOfCsv(await shell.readFile(flags.weeks), flags.weeks)
  const names = scenario.line.stations.flatMap(({ name, title }) => (title === name ? [name] : [name, title]))
  const table = flags.stations === undefined ? null : await shell.readFile(flags.stations)
  const stations = table === null ? null : stationsOfCsv(table, flags.stations!, names)
  const waits = table === null ? [] : waitsOfCsv(table, flags.stations!, names)
  const stops = flags.stops === undefined ? null : stopsOfCsv(await shell.readFile(flags.stops), flags.stops, stopNames(scenario))
  await checkOutputs(shell, flags)
  if (flags.write !== undefined) await shell.checkWritable(flags.write)
  const sweep = await shiftRuns(shell, source, flags, 'what the forecast was')
  const options = { seed: flags.seed, store: await openStore(shell, flags), signal: shell.signal, ...threadsOf(flags, shell) }
  const studies = {
    simulate: async (line: LineSpec) =>
      (await shiftRuns(shell, { scenario: { ...scenario, line } }, flags, 'what the recalibrated line makes')).counts[0]!.units,
    recalibrate: async (line: LineSpec, units: number) =>
      await refused(shell, () => recalibrate(line, { units, replications: STEP_REPLICATIONS }, options)),
  }
  const found = await refused(shell, () =>
    followUpOf(name, scenario, sweep.counts[0]!, { weeks, stations, stops, waits }, flags.seed, studies),
  )
  const { line } = found
  if (line !== null && flags.write !== undefined) await shell.writeFile(flags.write, writeScenario({ ...scenario, line }))
  const runs = { ...found.runs, written: line !== null && flags.write !== undefined ? flags.write : null }
  return await tell(shell, flags, {
    partial: sweep.partial,
    document: () => followUpDocument(file, runs),
    tale: ({ simulatedCell }) => {
      const { question, cells } = followUpStory(runs)
      return { question, cells: [...cells, simulatedCell('simulated', scenario, source.file, sweep, 'The line of the forecast', 'one')] }
    },
    name: scenario.name,
    command,
  })
}
