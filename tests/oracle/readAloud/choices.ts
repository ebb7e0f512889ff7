/** Choices for made-up lines, from a seed. */
import type { Distribution } from '@loopwright/stats'
import seedrandom from 'seedrandom'

export interface Choices {
  chance(probability: number): boolean
  /** whole number, both ends included */
  whole(min: number, max: number): number
  pick<T>(list: readonly T[]): T
  shuffled<T>(list: readonly T[]): T[]
}

export function choicesFrom(seed: number): Choices {
  const random = seedrandom.alea(`line ${seed}`)
  const whole = (min: number, max: number): number => min + Math.floor(random() * (max - min + 1))
  return {
    chance: (probability) => random() < probability,
    whole,
    pick: (list) => list[whole(0, list.length - 1)]!,
    shuffled(list) {
      const copy = [...list]
      for (let i = copy.length - 1; i > 0; i--) {
        const j = whole(0, i)
        ;[copy[i], copy[j]] = [copy[j]!, copy[i]!]
      }
      return copy
    },
  }
}

/** `whole`: whole seconds and ready-made distributions of them, for many ties; `mixed`: whole, binary and decimal fractions and every kind of distribution */
export type TimeStyle = 'whole' | 'mixed'

/** a time near `typical` seconds; 0 only where `mayBeZero` */
export function someTime(choose: Choices, style: TimeStyle, typical: number, mayBeZero: boolean): number {
  if (mayBeZero && choose.chance(0.12)) return 0
  const whole = Math.max(1, Math.round((typical * choose.whole(2, 20)) / 10))
  if (style === 'whole') return whole
  return choose.pick([whole, whole + 0.5, whole / 8 + 0.125, whole * 0.37 + 0.1])
}

export function someDistribution(choose: Choices, style: TimeStyle, typical: number, mayBeZero: boolean): Distribution {
  const time = (): number => someTime(choose, style, typical, mayBeZero)
  const times = (): number[] => Array.from({ length: choose.whole(2, 5) }, time)
  if (choose.chance(style === 'whole' ? 0.6 : 0.4)) return { kind: 'constant', value: time() }
  const ready = choose.pick(['discrete', 'empirical', 'replay'] as const)
  const kind = style === 'whole' ? ready : choose.pick([ready, ready, ...SMOOTH])
  const mean = someTime(choose, style, typical, false)
  const cv = choose.pick([0.1, 0.3, 0.8, 1.5])
  switch (kind) {
    case 'discrete': {
      const values = times()
      return { kind, values, weights: values.map(() => choose.whole(1, 5)) }
    }
    case 'empirical':
      return { kind, values: times(), interpolate: style === 'mixed' && choose.chance(0.5) }
    case 'replay':
      return { kind, values: times() }
    case 'uniform':
      return { kind, min: mean / 2, max: mean * 1.5 }
    case 'triangular':
    case 'pert':
      return { kind, min: mean / 2, mode: mean * choose.pick([0.5, 0.75, 1.5]), max: mean * 1.5 }
    case 'exponential':
      return { kind, mean }
    case 'lognormal':
    case 'gamma':
      return { kind, mean, cv }
    case 'weibull':
      return { kind, shape: choose.pick([0.7, 1, 2.5]), scale: mean }
    case 'occasional':
      return { kind, base: mean, probability: choose.pick([0.05, 0.4]), of: { kind: 'exponential', mean: mean * 2 } }
    case 'limited':
      return {
        kind,
        of: { kind: 'exponential', mean },
        shift: mean / 4,
        min: choose.pick([null, mean / 2]),
        max: choose.pick([null, mean * 3]),
      }
  }
}

const SMOOTH = ['uniform', 'triangular', 'pert', 'exponential', 'lognormal', 'gamma', 'weibull', 'occasional', 'limited'] as const
