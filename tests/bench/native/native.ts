/**
 * The second opinion on speed, and on the numbers: the same model for one kind of line, in plain C++ (`main.cpp` and what it includes), compiled here and handed a line as text.
 */
import { spawn, spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { canRecur, type LineSpec, type StationSpec } from '@loopwright/line'

export type NativeEngine = 'events' | 'recursion'

/** What the compiler is asked for beside the standard; fused multiplications would change last bits. */
const ALWAYS = ['-std=c++17', '-ffp-contract=off', '-Wall', '-Wextra']

/** The first C++ compiler that answers: the one named by CXX, or of the usual names; null where there is none. */
export function findCompiler(): { readonly command: string; readonly version: string } | null {
  for (const command of [process.env.CXX ?? '', 'g++', 'clang++', 'c++'].filter((name) => name !== '')) {
    const asked = spawnSync(command, ['--version'], { encoding: 'utf8' })
    if (asked.status === 0) return { command, version: asked.stdout.split('\n')[0]! }
  }
  return null
}

/** Compiles the program into the folder under a name; throws with the compiler's words. @returns the file */
export function compileNative(compiler: string, folder: string, name: string, flags: readonly string[]): string {
  const program = join(folder, name)
  const source = fileURLToPath(new URL('./main.cpp', import.meta.url))
  const done = spawnSync(compiler, [...ALWAYS, ...flags, '-o', program, source], { encoding: 'utf8' })
  if (done.status !== 0 || done.stderr !== '') throw new Error(`${compiler} ${flags.join(' ')} failed:\n${done.stderr}`)
  return program
}

/** Runs the program on the line. */
export function runNative(program: string, line: LineSpec, words: readonly string[]): string {
  const done = spawnSync(program, words, { input: nativeText(line), encoding: 'utf8', maxBuffer: 2 ** 30 })
  if (done.status !== 0) throw new Error(`${program} ${words.join(' ')} failed: ${done.stderr}`)
  return done.stdout
}

/** The program, running, which is asked for replications and tells how long they took. */
export interface Timed {
  /** @returns seconds of processor time */
  time(first: number, count: number): Promise<{ readonly seconds: number; readonly events: number }>
  end(): void
}

/** Started once, since the pages of a process that starts another are slow for a while. */
export function startNative(program: string, line: LineSpec, engine: NativeEngine, seed: string): Timed {
  const running = spawn(program, [engine, 'time', seed], { stdio: ['pipe', 'pipe', 'inherit'] })
  running.stdin.write(nativeText(line))
  const answers = createInterface(running.stdout)[Symbol.asyncIterator]()
  return {
    async time(first, count) {
      running.stdin.write(`${first} ${count}\n`)
      const answer = await answers.next()
      if (answer.done === true) throw new Error(`${program} ${engine} ended without an answer`)
      return JSON.parse(answer.value) as { seconds: number; events: number }
    },
    end: () => running.stdin.end(),
  }
}

/** The line as the program reads it. @throws RangeError  if the line has what the program does not know */
export function nativeText(line: LineSpec): string {
  const why = whyNotPlain(line)
  if (why !== null) throw new RangeError(`the program knows a plain loop of derived times only: ${why}`)
  const { zones, paths, stations, carriers, window, reactionSeconds } = line
  return [
    `carriers ${carriers.count}`,
    `window ${window.warmupSeconds} ${window.endSeconds}`,
    `reaction ${reactionSeconds}`,
    ...paths.map(
      ({ speedMetresPerSecond, accelerationMetresPerSecondSquared, distanceMetres }, p) =>
        `path ${speedMetresPerSecond} ${accelerationMetresPerSecondSquared ?? 0} ${distanceMetres} ${carriers.lengthMetres} ${zones[p]!.sensorBeforeStopMetres}`,
    ),
    ...stations.map((station) => stationText(line, station)),
    'end',
    '',
  ].join('\n')
}

function whyNotPlain(line: LineSpec): string | null {
  const { holds, why } = canRecur(line)
  if (!holds) return why
  if (line.breaks.length > 0 || line.breakdowns.length > 0) return 'it stops'
  if (line.carriers.start !== 'spread') return 'its carriers do not start spread'
  if (line.variants.length > 1) return 'it has several variants'
  if (line.zones.some(({ transfer, release }) => transfer !== null || release !== 'single')) return 'it has transfers, or trains'
  return line.paths.some(({ moveSeconds, clearSeconds, across }) => moveSeconds !== null || clearSeconds !== null || across)
    ? 'it has times that are given, or carriers that travel sideways'
    : null
}

function stationText({ tasks }: LineSpec, station: StationSpec): string {
  const duties = (['load', 'work', 'unload'] as const).filter((duty) => station[duty] !== null)
  const [duty] = duties
  const done = duty === undefined ? [] : station[duty]!
  const time = done[0]?.seconds[0]
  const { releaseSeconds } = station
  const isPlain = duties.length === 1 && done.length === 1 && releaseSeconds.kind === 'constant' && releaseSeconds.value === 0
  if (!isPlain || time?.kind !== 'lognormal')
    throw new RangeError(`the program knows stations of one duty, with one task of lognormal times and no release, and not ${station.name}`)
  return `station ${station.zone} ${duty} ${tasks[done[0]!.task]} ${time.mean} ${time.cv}`
}
