/** Numbers with their units that only decisions have: money, mass, force and the like; all others are read as scenarios read them. */
import { parseQuantity } from '@loopwright/scenario'
import type { Doubted } from '../money/pricedLine.ts'
import { type Reader, refuse } from './fields.ts'
import * as say from './messages.ts'

/** Factors to the unit that is kept. */
const UNITS = {
  mass: { kg: 1, g: 0.001, t: 1000, lb: 0.453_592_37 },
  force: { N: 1, kN: 1000, lbf: 4.448_221_615_260_5 },
  area: { 'm²': 1, m2: 1, 'ft²': 0.092_903_04, ft2: 0.092_903_04 },
  voltage: { V: 1 },
  power: { W: 1, kW: 1000 },
  current: { A: 1, mA: 0.001 },
  months: { months: 1, month: 1, years: 12, year: 12 },
  percent: { '%': 0.01 },
  perMinute: { '/min': 1, 'per min': 1 },
} as const satisfies Readonly<Record<string, Readonly<Record<string, number>>>>

/** Kinds of quantities that only decisions have. */
export type OwnDimension = keyof typeof UNITS

const EXAMPLES: Readonly<Record<OwnDimension, string>> = {
  mass: '115 kg',
  force: '150 N',
  area: '180 m²',
  voltage: '24 V',
  power: '40 W',
  current: '2.5 A',
  months: '24 months',
  percent: '10 %',
  perMinute: '30 /min',
}

interface Least {
  /** 'zero': 0 or more; 'above zero': more */
  readonly least?: 'zero' | 'above zero'
  readonly most?: number
}

/** A number with a unit of its own. */
export function own(dimension: OwnDimension, { least = 'above zero', most = 1e9 }: Least = {}): Reader<number> {
  const units: Readonly<Record<string, number>> = UNITS[dimension]
  const example = EXAMPLES[dimension]
  return (at, { report }) => {
    if (at.kind === 'number') {
      report.add(at, say.unitMissing(at.source, [`${at.source} ${Object.keys(units)[0]}`]))
      return undefined
    }
    if (at.kind !== 'text') return refuse(at, report, `a number with its unit, such as "${example}"`)
    const written = String(at.value).trim()
    const match = NUMBER.exec(written)
    if (match === null) return fail(say.notANumber(written, example))
    const [, digits = '', unit = ''] = match
    const value = plainNumber(digits)
    if (value === null) return fail(say.decimalComma(written, `${mended(digits)} ${unit}`.trim()))
    if (unit === '') return fail(say.unitMissing(written, [`${digits} ${Object.keys(units)[0]}`]))
    if (!Object.hasOwn(units, unit)) return fail(say.unitUnknown(unit, Object.keys(units)))
    const kept = value * units[unit]!
    if (kept < 0) return fail(say.negative(written))
    if (kept === 0 && least === 'above zero') return fail(say.zero(written))
    if (kept > most) return fail(say.tooBig(written, `${most / units[unit]!} ${unit}`))
    return kept
    function fail(sentence: ReturnType<typeof say.zero>): undefined {
      report.add(at, sentence)
      return undefined
    }
  }
}

const NUMBER = /^([+-]?\d[\d.,\s\u202f']*(?:[eE][+-]?\d+)?)\s*(\S.*)?$/

/** null where a comma or a blank stands inside. */
function plainNumber(digits: string): number | null {
  const trimmed = digits.trim()
  return /^[+-]?\d+(\.\d+)?([eE][+-]?\d+)?$/.test(trimmed) ? Number(trimmed) : null
}

/** `410 000` → `410000`, `38,5` → `38.5`, `410.000,50` → `410000.50` */
function mended(digits: string): string {
  const joined = digits.replace(/[\s\u202f']/g, '')
  if (joined.includes(',') && joined.includes('.')) {
    const sign = joined.lastIndexOf(',') > joined.lastIndexOf('.') ? ',' : '.'
    return joined.replaceAll(sign === ',' ? '.' : ',', '').replace(',', '.')
  }
  return /,\d{3}(,|$)/.test(joined) && !/^0?,/.test(joined) ? joined.replaceAll(',', '') : joined.replace(',', '.')
}

/** A length, speed, acceleration or duration, as scenarios read it. */
export function quantity(
  dimension: 'duration' | 'length' | 'speed' | 'acceleration',
  least: 'zero' | 'above zero' = 'above zero',
): Reader<number> {
  return (at, { report }) => {
    const found = at.kind === 'text' ? String(at.value) : at.kind === 'number' ? at.source : null
    if (found === null) return refuse(at, report, 'a number with its unit')
    const { value, fault } = parseQuantity(found, dimension)
    if (fault !== null) report.add(at, fault.sentence, fault.start, fault.length)
    else if (value === 0 && least === 'above zero') report.add(at, say.zero(found))
    else return value
    return undefined
  }
}

const PER = { once: '', hour: '/h', year: '/year' } as const
const MONEY = /^([+-]?\d[\d.,\s\u202f']*)\s*([^\d\s/±.,+-]+)?\s*(\/\s*\w+)?\s*(?:±\s*(.+))?$/u

/** An amount of money, once, an hour or a year, and how far it may be off: `38 €/h ± 5 %`. All amounts of a file are in one currency. */
export function money(per: keyof typeof PER): Reader<Doubted> {
  const tail = PER[per]
  return (at, reading) => {
    const { report } = reading
    const currency = reading.currency === '' ? '€' : reading.currency
    if (at.kind === 'number') {
      report.add(at, say.unitMissing(at.source, [`${at.source} ${currency}${tail}`]))
      return undefined
    }
    if (at.kind !== 'text') return refuse(at, report, `an amount such as "410000 ${currency}${tail}"`)
    const written = String(at.value).trim()
    const match = MONEY.exec(written)
    if (match === null) return fail(say.notANumber(written, `410000 ${currency}${tail}`))
    const [, digits = '', unit = '', slash = '', doubt] = match
    const value = plainNumber(digits)
    if (value === null) return fail(say.decimalComma(written, `${mended(digits)} ${unit === '' ? currency : unit}${slash}`))
    if (unit === '') return fail(say.unitMissing(written, [`${digits.trim()} ${currency}${tail}`]))
    if (slash.replace(/\s/g, '') !== tail) return fail(say.unitUnknown(`${unit}${slash}`, [`${unit}${tail}`]))
    if (value < 0) return fail(say.negative(written))
    if (reading.currency === '') reading.currency = unit
    else if (reading.currency !== unit) return fail(say.otherCurrency(unit, reading.currency))
    if (doubt === undefined) return { value, doubt: 0 }
    const share = /^(\d+(?:\.\d+)?)\s*%$/.exec(doubt.trim())
    if (share === null || Number(share[1]) > 100) return fail(say.doubtOdd(doubt.trim()))
    return { value, doubt: Number(share[1]) / 100 }
    function fail(sentence: ReturnType<typeof say.zero>): undefined {
      report.add(at, sentence)
      return undefined
    }
  }
}
