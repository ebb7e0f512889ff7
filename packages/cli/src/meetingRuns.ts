/** The alternative that a decision file speaks of, and its runs: for acceptance, trial, follow-up and promise. */
import { standingOf, TRIALS_LEAST } from '@loopwright/decide/acceptance'
import { type AcceptanceResult, acceptanceOf, type ChosenAlternative, chosenAlternative } from '@loopwright/notebook/decision'
import { type StudyOptions, sweepCarriers, type SweepResult } from '@loopwright/study'
import { runTrials } from '@loopwright/study/trials'
import { openStore, tellStore } from './keptRuns.ts'
import { loadDecision, type LoadedDecision } from './loadDecision.ts'
import type { Loaded } from './loadScenario.ts'
import { progress } from './shell/progress.ts'
import { Misuse, refusals, type Shell, Stopped } from './shell/shell.ts'
import { refused, type StudyFlags } from './studyCommand.ts'
import { threadsOf } from './threads.ts'

export interface Chosen extends ChosenAlternative {
  readonly loaded: LoadedDecision
  readonly source: Loaded
}

/** @throws Misuse  where the file has no such section */
export async function chosenBy(shell: Shell, file: string, section: 'acceptance' | 'promise'): Promise<Chosen> {
  const loaded = await loadDecision(shell, file)
  const found = refusals(() => chosenAlternative(loaded.decision, section, file))
  return { ...found, loaded, source: loaded.loaded[found.of]! }
}

/** @throws Misuse  where fewer windows are asked for than the question takes */
export function atLeast(least: number, of: string, { replications }: Pick<StudyFlags, 'replications'>): void {
  if (replications < least)
    throw new Misuse(`--replications ${replications}: this takes at least ${least} simulated ${of}; write --replications ${least} or more`)
}

/**
 * Simulates the trials of an acceptance.
 *
 * @param counts  of a trial that runs: that they can be such counts is asked before anything is simulated
 */
export async function acceptanceRuns(
  shell: Shell,
  file: string,
  flags: StudyFlags,
  counts: readonly number[] = [],
): Promise<Chosen & { readonly result: AcceptanceResult }> {
  const chosen = await chosenBy(shell, file, 'acceptance')
  const section = chosen.loaded.decision.acceptance!
  atLeast(TRIALS_LEAST, 'trials', flags)
  const looks = Math.max(1, Math.ceil(section.seconds / section.lookSeconds - 1e-9))
  if (counts.length > 0)
    refusals(() => standingOf(counts, { stopBelow: Array.from({ length: looks }, () => null) }, Number.POSITIVE_INFINITY))
  const { replications, seed } = flags
  const told = progress(
    shell,
    `what “${chosen.name}” has to make in a trial, ${replications} trials of two lines, seed ${seed}`,
    2 * replications,
  )
  const store = await openStore(shell, flags)
  const options: StudyOptions = { seed, store, signal: shell.signal, onProgress: told.onProgress, ...threadsOf(flags, shell) }
  const { seconds, lookSeconds, longer } = section
  const { line } = chosen.source.scenario
  const trials = await refused(shell, () => runTrials(line, { seconds, lookSeconds, longer, replications }, options))
  told.end(trials.partial)
  tellStore(shell, store)
  if (trials.partial) throw new Stopped('stopped before all trials were simulated: nothing to tell')
  return { ...chosen, result: refusals(() => acceptanceOf(section, trials)) }
}

/** Simulates shifts of a line as it stands. */
export async function shiftRuns(
  shell: Shell,
  { scenario }: Pick<Loaded, 'scenario'>,
  flags: StudyFlags,
  what: string,
): Promise<SweepResult> {
  const { replications, seed } = flags
  const { line, plan } = scenario
  const told = progress(shell, `${what}, ${replications} replications, seed ${seed}`, replications)
  const store = await openStore(shell, flags)
  const options: StudyOptions = { seed, store, signal: shell.signal, onProgress: told.onProgress, ...threadsOf(flags, shell) }
  const sweep = await refused(shell, () =>
    sweepCarriers(line, { counts: [line.carriers.count], replications, plan: plan?.unitsPerWindow ?? null }, options),
  )
  told.end(sweep.partial)
  tellStore(shell, store)
  if (sweep.counts[0]!.units.length < 2) throw new Stopped('stopped before two shifts were simulated: nothing to tell')
  return sweep
}
