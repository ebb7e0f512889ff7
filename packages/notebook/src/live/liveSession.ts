/** A scenario that somebody changes and watches: reads the changes as the command does, runs the lines in the same worlds, tells of them while the runs grow. */
import { type Figure, timeline, type TimelinePause } from '@loopwright/charts'
import { formatNumber } from '@loopwright/charts/table'
import {
  addVariation,
  formatProblems,
  type Changes,
  type Problem,
  readScenario,
  readScenarioWith,
  type Scenario,
  type ShiftStart,
  variationText,
} from '@loopwright/scenario'
import type { LineSpec } from '@loopwright/line'
import { type CarrierStay, carrierStays, growingSweep, type SweepResult, traceRun } from '@loopwright/study'
import { type CompareResult, growingComparison } from '@loopwright/study/compare'
import { compareWarnings, linesTable } from '../compare/compareStory.ts'
import { compareSentences, compareSure, differenceSentence } from '../compare/compareWords.ts'
import type { LiveData } from '../page/pageData.ts'
import type { Replay } from '../replay/replay.ts'
import { replayOf } from '../replay/replayOf.ts'
import { type WatchedLine, watchedLine } from '../replay/watchedLine.ts'
import { endSentence } from '../runs/endWords.ts'
import { type Period, period } from '../sweep/period.ts'
import { tracePauses } from '../trace/tracePauses.ts'
import { stretchWords } from '../trace/traceStory.ts'
import { clockText } from '../words/clockWords.ts'
import { type LiveValues, liveChanges, OWN_PATH } from './liveChanges.ts'
import { compareCommand, keptName, variationCommand } from './liveCommand.ts'
import { CURVE_STAGES, curveFigure, isOnlyCount, takenCounts } from './liveCurve.ts'
import { liveFigures } from './liveFigures.ts'
import type { LiveInput } from './liveInput.ts'
import type { LiveAsk, LiveKept, LiveSetting, LiveTold } from './liveTold.ts'
import { tooMany } from './tooMany.ts'

export interface LiveSession {
  /** as the file says it, for a drawing */
  readonly line: WatchedLine
  /**
   * Simulates settings beside the file and tells of them, again and again with more replications.
   *
   * @param tell    told until the last, or until the signal
   * @param signal  another setting is wanted
   */
  ask(ask: LiveAsk, tell: (told: LiveTold) => void, signal: AbortSignal): Promise<void>
  /** A setting as a variation of the file; null where it is refused. */
  keep(setting: LiveSetting, replications: number): LiveKept | null
  /**
   * One run of a setting, to be watched.
   *
   * @param replication  which of the shifts, from 0
   * @param signal       another one is wanted
   */
  watch(values: LiveValues, replication: number, signal: AbortSignal): Promise<Watched | Extract<LiveRead, { scenario: null }> | null>
  /** The timeline of a stretch of the run that was watched last; null: none was, or the stretch has no length. */
  stretch(fromSeconds: number, toSeconds: number): Figure | null
  /** The scenario with a setting; what is wrong with it as the command tells it. */
  read(values: LiveValues): LiveRead
}

/** A run, and the line that it is a run of, as it is drawn. */
export interface Watched {
  readonly replay: Replay
  readonly line: WatchedLine
  readonly output: number
  /** instants of clock times of the day; empty without a calendar */
  readonly shiftStarts: readonly ShiftStart[]
}

export type LiveRead =
  | { readonly scenario: Scenario; readonly changes: Changes }
  /** it cannot be read, or is more than a page simulates */
  | { readonly scenario: null; readonly key: string | null; readonly text: string }

/** numbers of replications after which figures are told, in turns: after each the curve is drawn, with more replications than before */
const TURNS = [[5], [10, 20, 40], [80, 160, 320]] as const
export const STAGES = TURNS.flat()
/** so many runs of a line that stood still are looked at for the reason */
const LOOKED_AT = 10
/** settings whose scenarios are kept, so that their runs are known when they come again */
const READ_MAX = 8

/**
 * @param data  what the page carries
 * @throws Error  if the scenario itself has errors: a page is made of none that has
 */
export function liveSession({ source, inputs, seed, curve }: LiveData): LiveSession {
  const files = (path: string): string | null => (Object.hasOwn(source.beside, path) ? source.beside[path]! : null)
  const { scenario: base, problems: known, notes, values: written } = readScenario(source.text, { files })
  if (base === null) throw new Error(formatProblems(known, source.text, source.file))
  const words = period(base)
  const growing = growingComparison({ seed })
  const sweeping = growingSweep({ seed })
  const kept = new Map<string, LiveRead>()
  let seen: { readonly stays: readonly CarrierStay[]; readonly line: LineSpec; readonly pauses: readonly TimelinePause[] } | null = null

  const read = (values: LiveValues): LiveRead => {
    const told = liveChanges(written, inputs, values)
    if (told.kind === 'fault') return { scenario: null, key: told.key, text: `${told.message}; ${told.fix}.` }
    const key = JSON.stringify(told.changes)
    const before = kept.get(key)
    kept.delete(key)
    const now = before ?? (key === '{}' ? judged(base, {}) : readAgain(told.changes))
    kept.set(key, now)
    if (kept.size > READ_MAX) kept.delete(kept.keys().next().value!)
    return now
  }
  const judged = (scenario: Scenario, changes: Changes): LiveRead => {
    const many = tooMany(scenario.line)
    return many === null ? { scenario, changes } : { scenario: null, key: null, text: many }
  }
  const readAgain = (changes: Changes): LiveRead => {
    const { scenario, problems } = readScenarioWith(source.text, changes, { files, changePrefix: '--set ' })
    if (scenario !== null) return judged(scenario, changes)
    const errors = problems.filter(({ severity }) => severity === 'error')
    return { scenario: null, key: keyOf(errors[0], inputs), text: formatProblems(errors, source.text, source.file) }
  }
  /** The curve of a setting, with the replications of a stage; nothing where the page has none, or nothing is set. */
  const drawCurve = async (
    { id, scenario, changes }: { readonly id: number; readonly scenario: Scenario; readonly changes: Changes },
    stage: number,
    tell: (told: LiveTold) => void,
    signal: AbortSignal,
  ): Promise<void> => {
    if (curve === null || Object.keys(changes).length === 0) return
    const { line, plan } = scenario
    const drawn = { kind: 'curve', id, cell: curve.cell, carriers: line.carriers.count } as const
    if (isOnlyCount(changes)) {
      if (stage === 0) tell({ ...drawn, figure: null, simulated: '' })
      return
    }
    const counts = takenCounts(curve, line)
    if (counts.length === 0) return
    const request = { counts, plan: plan?.unitsPerWindow ?? null, stages: [CURVE_STAGES[stage]!] }
    const show = (swept: SweepResult): void =>
      tell({
        ...drawn,
        figure: curveFigure(curve, scenario, swept),
        simulated: `${formatNumber(swept.replications, 0)} ${words.many} of each count`,
      })
    await sweeping.sweep(line, request, { onStage: show, signal })
  }

  return {
    line: watchedLine(base),
    read,
    async watch(values, replication, signal) {
      const found = read(values)
      if (found.scenario === null) return found
      const traced = await traceRun(found.scenario.line, { replication }, { seed, signal, workers: 0 })
      if (traced === null || signal.aborted) return null
      const { run, trace } = traced
      const replay = replayOf(found.scenario, trace, run.end)
      seen = { stays: carrierStays(trace, found.scenario.line), line: found.scenario.line, pauses: tracePauses(trace, found.scenario) }
      return {
        replay,
        line: watchedLine(found.scenario),
        output: run.output,
        shiftStarts: notes?.shiftStarts ?? [],
      }
    },
    stretch(fromSeconds, toSeconds) {
      if (seen === null || !(toSeconds > fromSeconds)) return null
      const { stays, line, pauses } = seen
      const starts = notes?.shiftStarts ?? []
      return timeline(stays, {
        zones: line.zones.map(({ name }) => name),
        places: line.zones.map((_, zone) => line.stations.find((station) => station.zone === zone)?.name ?? ''),
        fromSeconds,
        toSeconds,
        stretch: stretchWords(fromSeconds, toSeconds, starts),
        ...(starts.length === 0 ? {} : { clock: (seconds) => clockText(starts, seconds) }),
        pauses,
      })
    },
    async ask({ id, settings }, tell, signal) {
      const all: Exclude<LiveRead, { scenario: null }>[] = []
      for (const { values } of [{ values: {} }, ...settings]) {
        const found = read(values)
        if (found.scenario === null) {
          tell({ kind: 'refused', id, key: found.key, text: found.text })
          return
        }
        all.push(found)
      }
      const changes = all.slice(1).map((one) => one.changes)
      const lines = all.map(({ scenario: { line, plan } }, index) => ({
        name: index === 0 ? base.name : settings[index - 1]!.name,
        line,
        plan: plan?.unitsPerWindow ?? null,
      }))
      const scenarios = all.map(({ scenario }) => scenario)
      const told = (result: CompareResult, last: boolean, why: readonly string[]): LiveTold => ({
        kind: 'told',
        id,
        last,
        replications: result.replications,
        simulated: `${formatNumber(result.replications, 0)} ${words.many}`,
        carriers: lines.at(-1)!.line.carriers.count,
        figures: liveFigures(result, words),
        sentences: [...compareSentences(result, words), ...besideEachOther(result, words)],
        warnings: [
          ...compareWarnings(scenarios, result, words, 'live').map(({ title, markdown }) => ({ title, text: markdown })),
          ...why.map((text) => ({ title: 'Why', text })),
        ],
        table: linesTable(result, words),
        sure: compareSure(result, words),
        changes: settings.map(({ values }) => changeWords(inputs, values)),
        command:
          source.variation === null ? compareCommand(source.file, settings, changes, { replications: result.replications, seed }) : null,
        lines: result.lines.map(({ name, units, gridlocks }) => ({ name, units, gridlocks })),
      })
      const [few, ...more] = TURNS
      const first = await growing.compare(lines, { stages: few }, { signal })
      const still = first?.lines.findIndex(({ gridlocks }) => gridlocks > 0) ?? -1
      const why = still < 0 ? [] : await whyStill(lines[still]!.line, seed, signal)
      if (first === null || signal.aborted) return
      tell(told(first, false, why))
      const set = { id, ...all.at(-1)! }
      await drawCurve(set, 0, tell, signal)
      for (const [turn, stages] of more.entries()) {
        if (signal.aborted) return
        const onStage = (result: CompareResult): void => tell(told(result, result.replications === STAGES.at(-1), why))
        await growing.compare(lines, { stages }, { onStage, signal })
        if (!signal.aborted) await drawCurve(set, turn + 1, tell, signal)
      }
    },
    keep({ name, values }, replications) {
      const found = read(values)
      if (found.scenario === null) return null
      const fileName = keptName(source.file, name)
      return {
        kind: 'kept',
        words: changeWords(inputs, values),
        yaml: variationText(name, found.changes),
        file: addVariation(source.text, name, found.changes),
        fileName,
        command:
          source.variation === null
            ? compareCommand(source.file, [{ name, values }], [found.changes], { replications, seed })
            : variationCommand(fileName, name, { replications, seed }),
      }
    },
  }
}

/** What was set, in the words of the page. */
function changeWords(inputs: readonly LiveInput[], values: LiveValues): string[] {
  const set = inputs.flatMap(({ key, label, file }) => {
    const value = values[key]?.trim()
    return value === undefined || value === file ? [] : [`${label}: ${file} → ${value}`]
  })
  const own = Object.entries(values).flatMap(([key, value]) =>
    key.startsWith(OWN_PATH) ? [`${key.slice(OWN_PATH.length)} = ${value}`] : [],
  )
  return [...set, ...own]
}

/** Two settings beside each other, not only beside the file. */
function besideEachOther({ lines, pairs }: CompareResult, words: Period): string[] {
  const pair = pairs.find(({ first, second }) => first === 2 && second === 1)
  return pair === undefined ? [] : [differenceSentence(lines[2]!.name, lines[1]!.name, pair.difference, words)]
}

/** Why a line stood still, by the first of its runs that did. */
async function whyStill(line: LineSpec, seed: string, signal: AbortSignal): Promise<string[]> {
  for (let replication = 0; replication < LOOKED_AT && !signal.aborted; replication += 1) {
    const traced = await traceRun(line, { replication }, { seed, signal, workers: 0 })
    const sentence = traced === null ? null : endSentence(traced.run.end, line)
    if (sentence !== null) return [sentence]
  }
  return []
}

/** The input whose change a problem is about. */
function keyOf(problem: Problem | undefined, inputs: readonly LiveInput[]): string | null {
  const paths = ({ does }: LiveInput): readonly string[] => (does.kind === 'path' ? [does.path] : does.kind === 'times' ? does.paths : [])
  return inputs.find((input) => paths(input).some((path) => problem?.change?.includes(`${path}=`) === true))?.key ?? null
}
