/** An invented grid: carriers, drive speed, and in the larger one the time of a robot. Figures for drawing, computed by nobody. */
import type { GridPoint } from '@loopwright/study/compare'
import type { GridNumbers } from '../grid/gridParts.ts'

const REPLICATIONS = 40
const PLAN = 320
const HALF_WIDTH = 2.6

const CARRIERS = { name: 'carriers', levels: ['6', '7', '8', '9', '10', '11', '12'] }
const SPEED = { name: 'drive.speed', levels: ['10 m/min', '12 m/min', '15 m/min'] }
const ROBOT = { name: 'stations.S6.work', levels: ['64 s', '70 s'] }

/** Output that bends from the limit of the carriers to that of the stations. */
function meanUnits(carriers: number, speed: number, robotSeconds: number): number {
  const byCarriers = 54 * carriers * (speed / 15) ** 0.6
  const byStations = 337 * (64 / robotSeconds)
  return (byCarriers ** -12 + byStations ** -12) ** (-1 / 12) - 1.5 * Math.max(0, carriers - 10)
}

function point(levels: readonly number[], carriers: number, mean: number, base: number): GridPoint {
  const successes = Math.round(REPLICATIONS / (1 + Math.exp((PLAN - mean) / 4)))
  const share = successes / REPLICATIONS
  const more = mean - base
  const interval = { n: REPLICATIONS, sd: HALF_WIDTH * 3.1, level: 0.95, halfWidth: HALF_WIDTH }
  return {
    levels,
    carriers,
    plan: PLAN,
    units: Array.from({ length: REPLICATIONS }, () => Math.round(mean)),
    mean: { ...interval, mean, low: mean - HALF_WIDTH, high: mean + HALF_WIDTH, skewness: 0, method: 'Hall', status: 'ok' },
    p10: { p: 0.1, n: REPLICATIONS, level: 0.95, point: Math.round(mean - 11), low: null, high: null, coverage: 0.9, status: 'one limit' },
    meetsPlan: { successes, n: REPLICATIONS, level: 0.95, share, low: share * 0.9, high: Math.min(1, share * 1.1), status: 'ok' },
    planVerdict: null,
    gridlocks: 0,
    outOfProducts: 0,
    toBase:
      Math.abs(more) < 1e-9
        ? null
        : {
            ...interval,
            level: 0.998,
            mean: more,
            low: more - HALF_WIDTH,
            high: more + HALF_WIDTH,
            pairingGain: 6,
            status: 'difference shown',
          },
  }
}

/** Two factors, or three. */
export function gridExample(third: boolean): GridNumbers {
  const factors = third ? [CARRIERS, SPEED, ROBOT] : [CARRIERS, SPEED]
  const base = meanUnits(12, 15, 64)
  const robots = third ? [64, 70] : [64]
  const points = [6, 7, 8, 9, 10, 11, 12].flatMap((carriers, c) =>
    [10, 12, 15].flatMap((speed, s) =>
      robots.map((seconds, r) => point(third ? [c, s, r] : [c, s], carriers, meanUnits(carriers, speed, seconds), base)),
    ),
  )
  const at = points.findIndex(({ toBase }) => toBase === null)
  const mean = (c: number, s: number) => {
    const own = points.filter(({ levels }) => levels[0] === c && levels[1] === s)
    return own.reduce((sum, each) => sum + each.mean!.mean / own.length, 0)
  }
  const [gainHere, gainThere] = [mean(3, 0) - mean(0, 0), mean(3, 2) - mean(0, 2)]
  const difference = gainThere - gainHere
  return {
    factors,
    points,
    base: at,
    best: points.reduce((most, each, index) => (each.mean!.mean > points[most]!.mean!.mean ? index : most), 0),
    maybeBest: [...points.keys()].filter((index) => points[index]!.mean!.mean > 336),
    effects: {
      n: REPLICATIONS,
      level: 0.95,
      main: [],
      interactions: [
        {
          first: 0,
          second: 1,
          from: 0,
          to: 3,
          here: 0,
          there: 2,
          gainHere,
          gainThere,
          difference: {
            n: REPLICATIONS,
            mean: difference,
            sd: 9,
            level: 0.9992,
            halfWidth: 3.2,
            low: difference - 3.2,
            high: difference + 3.2,
            pairingGain: 8,
            status: 'difference shown',
          },
        },
      ],
    },
  }
}
