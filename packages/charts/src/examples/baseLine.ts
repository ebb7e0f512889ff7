/** An invented line with the shape of a real one: 22 zones, seven stations, four corners, 5 … 17 carriers, plan of 320 units a shift. Figures for drawing, computed by nobody. */
import type { QuantileEstimate } from '@loopwright/stats'
import type { StationShares, SweepCount, SweepResult, ZoneShares } from '@loopwright/study'
import type { PlanZone } from '../plan/planZone.ts'

export const SHIFT = { per: 'shift', windowSeconds: 30_000, netSeconds: 27_000, plan: 320 } as const
export const BREAKS = [
  { startSeconds: 7_200, lengthSeconds: 600 },
  { startSeconds: 15_000, lengthSeconds: 1_800 },
  { startSeconds: 23_400, lengthSeconds: 600 },
]

/** carriers, mean units, standard deviation */
const UNITS: readonly (readonly [number, number, number])[] = [
  [5, 230.1, 6.0],
  [6, 267.5, 8.0],
  [7, 298.8, 9.7],
  [8, 318.9, 10.7],
  [9, 327.2, 10.8],
  [10, 330.2, 10.6],
  [11, 331.9, 10.5],
  [12, 332.5, 10.4],
  [13, 332.1, 10.4],
  [14, 330.6, 10.6],
  [15, 327.9, 11.0],
  [16, 320.7, 11.1],
  [17, 274.4, 8.8],
]

/** title, zone, mean seconds of work and release, minutes stopped */
const STATIONS: readonly (readonly [string, number, number, number])[] = [
  ['Load', 1, 42.2, 2],
  ['Refrigerant parts', 3, 62.2, 9],
  ['Joining', 6, 60.8, 14],
  ['Wiring', 12, 61.36, 2],
  ['Fan deck and casing', 14, 58.2, 2],
  ['Tightness test', 16, 63.8, 21],
  ['Unload', 18, 40.2, 2],
]
const CORNERS = [8, 10, 19, 21]
const REPLICATIONS = 200

/** Normal scores without a normal quantile: Tukey's lambda distribution, good to 0.02. */
function score(replication: number): number {
  const p = (((replication * 77) % REPLICATIONS) + 0.5) / REPLICATIONS
  return 4.91 * (p ** 0.14 - (1 - p) ** 0.14)
}

export function baseLineCount(carriers: number): SweepCount {
  const [, mean, sd] = UNITS.find(([n]) => n === carriers)!
  const units = Array.from({ length: REPLICATIONS }, (_, replication) => Math.round(mean + sd * score(replication)))
  const sorted = units.toSorted((a, b) => a - b)
  const at = (p: number) => sorted[Math.floor((REPLICATIONS - 1) * p)]!
  const halfWidth = (1.972 * sd) / Math.sqrt(REPLICATIONS)
  const met = units.filter((each) => each >= SHIFT.plan).length
  const stationLimited = 47.76 / 3600
  const carrierLimited = carriers / 535.6
  const spaceLimited = (18 - carriers) / 89.1
  const rate = Math.min(stationLimited, carrierLimited, spaceLimited)
  return {
    carriers,
    replications: REPLICATIONS,
    units,
    mean: {
      n: REPLICATIONS,
      mean,
      sd,
      level: 0.95,
      halfWidth,
      low: mean - halfWidth,
      high: mean + halfWidth,
      skewness: 0,
      method: 'Hall',
      status: 'ok',
    },
    controlled: null,
    p10: quantile(0.1, at),
    p50: quantile(0.5, at),
    p90: quantile(0.9, at),
    meetsPlan: {
      successes: met,
      n: REPLICATIONS,
      level: 0.95,
      status: met === 0 ? 'none' : met === REPLICATIONS ? 'every one' : 'ok',
      share: met / REPLICATIONS,
      low: Math.max(0, met / REPLICATIONS - 0.06),
      high: Math.min(1, met / REPLICATIONS + 0.05),
    },
    planVerdict: null,
    singleShift: {
      n: REPLICATIONS,
      low: mean - 2 * sd,
      high: mean + 2 * sd,
      level: 0.95,
      method: 'order statistics',
      coverage: 0.95,
    },
    gridlocks: 0,
    moving: null,
    outOfProducts: 0,
    law: {
      carrierLimited,
      stationLimited,
      spaceLimited,
      rate,
      regime: rate === stationLimited ? 'station-limited' : rate === carrierLimited ? 'carrier-limited' : 'space-limited',
      exact: false,
    },
    stations: stations(carriers, mean),
    zones: zones(carriers),
    carrierShares: { moving: 0.4, 'worked on': 0.35, 'waiting with product': 0.15, 'waiting empty': 0.1 },
    outputByHour: outputByHour(mean),
    hourSpread: outputByHour(mean).map((units) => ({ p10: units - 4, p90: units + 3 })),
    stoppedBy: [
      { cause: 'tester fault', seconds: 1_080, count: 3.6 },
      { cause: 'joining tool fault', seconds: 630, count: 2.1 },
      { cause: 'refrigerant pump fault', seconds: 300, count: 1.2 },
      { cause: 'corner T1', seconds: 96, count: 0.3 },
      { cause: 'corner T2', seconds: 90, count: 0.3 },
      { cause: 'corner T3', seconds: 84, count: 0.2 },
      { cause: 'corner T4', seconds: 72, count: 0.2 },
      { cause: 'short stops of all stations', seconds: 840, count: 34 },
      { cause: 'break', seconds: 3_000, count: 3 },
    ],
    lapSecondsMean: (27_000 / mean) * carriers,
    timeInLineSecondsMean: (27_000 / mean) * carriers * 0.78,
    productsInLineMean: carriers * 0.78,
  }
}

function quantile(p: number, at: (p: number) => number): QuantileEstimate {
  return { p, n: REPLICATIONS, level: 0.95, point: at(p), low: at(p - 0.05), high: at(p + 0.05), coverage: 0.96, status: 'ok' }
}

export function baseLineSweep(): SweepResult {
  return {
    kind: 'carrier sweep',
    engineVersion: '0.1.0',
    seed: 'example',
    replications: REPLICATIONS,
    chance: true,
    partial: false,
    plan: SHIFT.plan,
    window: { warmupSeconds: 30_000, endSeconds: 60_000 },
    law: {
      lapSeconds: 535.6,
      exchangeSeconds: 75.375,
      constraintZone: 16,
      constraintStation: 5,
      holeLapSeconds: 89.1,
      storageZones: 18,
      unitsPerLap: 1,
      variantShares: [1],
      carriersLow: 8,
      carriersHigh: 16,
      exchanges: [],
      exact: false,
      estimateReasons: [],
    },
    lawSeconds: SHIFT.netSeconds,
    counts: UNITS.map(([carriers]) => baseLineCount(carriers)),
    answer: {
      within: 0.01,
      level: 0.95,
      reference: 12,
      best: 12,
      chosen: 10,
      notConfirmed: { carriers: 9, reason: 'may fall short', shortBy: 2.4, lowerLimit: -2.4, against: 12, shown: true },
      bestAtUpperEnd: false,
      chosenAtLowerEnd: false,
      replications: REPLICATIONS,
    },
    planAnswer: null,
  }
}

export function baseLinePlan(carriers: number): PlanZone[] {
  return zones(carriers).map(({ name, occupancyMean }, index): PlanZone => {
    const station = STATIONS.find(([, zone]) => zone === index)
    return {
      name,
      lengthMetres: 1.5,
      turn: CORNERS.includes(index) ? 'right' : null,
      transfer: CORNERS.includes(index),
      station: station ? { title: station[0], duties: station[0] === 'Load' ? ['load'] : station[0] === 'Unload' ? ['unload'] : [] } : null,
      value: occupancyMean,
      label: String(Math.round(occupancyMean * 100)),
    }
  })
}

function stations(carriers: number, units: number): StationShares[] {
  const full = Math.min(1, Math.max(0, (carriers - 6) / 11)) ** 1.5
  return STATIONS.map(([title, , seconds, stopped], index) => {
    const [working, exchanging] = [(units * seconds) / 60, (units * 11.575) / 60]
    const rest = Math.max(0, 500 - (working + exchanging + stopped + 50))
    const blocked = rest * full
    return {
      name: `S${index + 1}`,
      title,
      shares: {
        working: working / 500,
        handling: 0,
        'waiting for operator': 0,
        'waiting for product': 0,
        'waiting for receiver': 0,
        blocked: blocked / 500,
        exchanging: exchanging / 500,
        starved: (rest - blocked) / 500,
        stopped: stopped / 500,
        break: 50 / 500,
      },
      longestBlockSecondsMean: 40 + 300 * full,
      stoppedBy: [{ cause: 'break', seconds: 3_000 }],
    }
  })
}

function zones(carriers: number): ZoneShares[] {
  const weights = Array.from({ length: 22 }, (_, index) => {
    if (CORNERS.includes(index)) return 0.22
    const station = STATIONS.find(([, zone]) => zone === index)
    const ahead = STATIONS.find(([, zone]) => zone > index)?.[1] ?? 23
    const slow = (STATIONS.find(([, zone]) => zone === ahead)?.[2] ?? 42) / 63.8
    return station ? 0.55 + station[2] / 200 : 0.14 + (0.62 * slow ** 3) / (ahead - index) + carriers / 60
  })
  let scale = carriers / weights.reduce((sum, each) => sum + each, 0)
  for (let pass = 0; pass < 20; pass += 1) scale *= carriers / weights.reduce((sum, each) => sum + Math.min(0.97, each * scale), 0)
  return weights.map((weight, index) => {
    const occupancyMean = Math.min(0.97, weight * scale)
    const station = STATIONS.find(([, zone]) => zone === index)
    const working = station ? Math.min(occupancyMean - 0.05, station[2] / 95) : 0
    const moving = 0.08
    const blocked = Math.max(0, occupancyMean - working - moving)
    return {
      name: `Z${String(index + 1).padStart(2, '0')}`,
      occupancyMean,
      shares: { free: 1 - occupancyMean - 0.04, claimed: moving, working, blocked, other: 0, vacating: 0.04, stopped: 0 },
    }
  })
}

function outputByHour(units: number): number[] {
  const worked = [60, 60, 50, 60, 30, 60, 50, 60, 20]
  const tilt = [1.01, 1, 0.99, 1, 1.005, 0.99, 1, 1, 1.01]
  return worked.map((minutes, hour) => (units * minutes * tilt[hour]!) / 450)
}
