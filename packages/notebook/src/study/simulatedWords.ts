/** What a study simulated, as the beginning of a sentence. */
import type { DriverResult, LossResult, OrderResult } from '@loopwright/study'
import type { CompareResult, GridResult } from '@loopwright/study/compare'
import type { ForecastResult } from '../forecast/forecastOf.ts'
import type { Period } from '../sweep/period.ts'
import { counted } from '../words/countedWords.ts'

/** What is simulated for a study of several lines. */
export type SimulatedStudy = CompareResult | OrderResult | DriverResult | LossResult | GridResult

/**
 * "3 lines in the same simulated shifts"
 *
 * @example simulatedWords(await findDrivers(scenario.line, { replications: 2 }, { seed: '1', workers: 0 }), period(scenario)) // => 'The line as it stands and 13 drivers, each up and down, in the same simulated shifts'
 */
export function simulatedWords(result: SimulatedStudy | ForecastResult, { many }: Pick<Period, 'many'>): string {
  const same = `in the same simulated ${many}`
  switch (result.kind) {
    case 'comparison':
      return `${counted(result.lines.length, 'line')} ${same}`
    case 'station order':
      return `${counted(result.candidates.length, 'station order')} ${same}; today’s and the one chosen again in others`
    case 'drivers':
      return `The line as it stands and ${counted(result.drivers.length, 'driver')}, each up and down, ${same}`
    case 'losses':
      return `The line as it stands and without each of ${counted(result.causes.length, 'cause')}, ${same}`
    case 'forecast':
      return 'The line as it stands'
    case 'grid':
      return `${counted(result.points.length, 'setting')} ${result.outside === null ? '' : 'and the line as it stands '}${same}`
  }
}
