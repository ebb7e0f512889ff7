/** Constant times: the law of MODEL.md §12, the values of ../exact/constant-times.json with their source. */
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readAloud } from './readAloud.ts'
import { type SwapLoop, swapLoop } from './swapLoop.ts'

interface Check {
  readonly id: string
  readonly model: SwapLoop
  readonly value: number
  readonly tolerance: { readonly warmupSeconds: number; readonly countWithin: number }
  readonly note: string
}

const { checks } = JSON.parse(readFileSync(new URL('../exact/constant-times.json', import.meta.url), 'utf8')) as { checks: Check[] }

/** X = min( N / Σ(m_i + S_i), 1 / max_i(m_{i−1} + S_i + c_i), (Z − N) / Σ c_i ) */
function law({ zones, carriers, tasks, moveSeconds, clearSeconds }: SwapLoop): number {
  const at = (times: SwapLoop['moveSeconds'] | 'move', zone: number): number => (Array.isArray(times) ? times[zone] : times) as number
  const m = (zone: number): number => at(moveSeconds, (zone + zones) % zones)
  const c = (zone: number): number => at(clearSeconds, zone)
  const s = (zone: number): number => (tasks.find((task) => task.zone === zone)?.time ?? 0) as number
  const all = Array.from({ length: zones }, (_, zone) => zone)
  const sum = (f: (zone: number) => number): number => all.reduce((total, zone) => total + f(zone), 0)
  return Math.min(
    carriers / sum((zone) => m(zone) + s(zone)),
    1 / Math.max(...all.map((zone) => m(zone - 1) + s(zone) + c(zone))),
    (zones - carriers) / sum(c),
  )
}

test.each(checks)('$id: $note', ({ model, value, tolerance }) => {
  expect(law(model)).toBeCloseTo(value, 12)
  // The warm-up of the source, at most 6400 s; then 240 outputs: a whole number of periods of every one of these loops, so the count is exact.
  const outputs = 240
  const windowSeconds = Math.round(outputs / value)
  const run = readAloud(swapLoop(model, Math.min(tolerance.warmupSeconds, 6400), windowSeconds), 'constant', 0).result
  expect(run.end.reason).toBe('end of window')
  expect(run.output).toBe(outputs)
})
