/** Numbers with their units that only decisions have: money, mass, force and the like; all others are read as scenarios read them. */
import { parseQuantity, type UnitTable } from '@loopwright/scenario'
import type { Doubted } from '../money/pricedLine.ts'
import { type Reader, refuse } from './fields.ts'
import * as say from './messages.ts'

const units = (name: string, table: UnitTable['units']): UnitTable => ({
  name,
  units: table,
  proposals: Object.keys(table).slice(0, 1),
  most: Number.MAX_VALUE,
  mostText: '',
})

/** The first unit of each is the one that is kept; of months one, of shares 100 %. */
const UNITS = {
  mass: units('a mass', { kg: [1n, 1n], g: [1n, 1000n], t: [1000n, 1n], lb: [45_359_237n, 100_000_000n] }),
  force: units('a force', { N: [1n, 1n], kN: [1000n, 1n], lbf: [44_482_216_152_605n, 10_000_000_000_000n] }),
  area: units('an area', { 'm²': [1n, 1n], m2: [1n, 1n], 'ft²': [9_290_304n, 100_000_000n], ft2: [9_290_304n, 100_000_000n] }),
  voltage: units('a voltage', { V: [1n, 1n] }),
  power: units('a power', { W: [1n, 1n], kW: [1000n, 1n] }),
  current: units('a current', { A: [1n, 1n], mA: [1n, 1000n] }),
  months: units('a number of months or years', { months: [1n, 1n], month: [1n, 1n], years: [12n, 1n], year: [12n, 1n] }),
  percent: units('a share', { '%': [1n, 100n] }),
  perMinute: units('a number per minute', { '/min': [1n, 1n] }),
} as const satisfies Readonly<Record<string, UnitTable>>

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
  const [[unit, [up, down]]] = Object.entries(UNITS[dimension].units) as [[string, readonly [bigint, bigint]]]
  const limit = { value: most, text: `${(most * Number(down)) / Number(up)} ${unit}` }
  // "30 per min" is "30 /min"
  return measured(UNITS[dimension], `a number with its unit, such as "${EXAMPLES[dimension]}"`, least, limit, (text) =>
    text.replace(/\bper min$/, '/min'),
  )
}

/** A length, speed, acceleration or duration, as scenarios read it. */
export const quantity = (
  dimension: 'duration' | 'length' | 'speed' | 'acceleration',
  least: 'zero' | 'above zero' = 'above zero',
): Reader<number> => measured(dimension, 'a number with its unit', least)

function measured(
  of: Parameters<typeof parseQuantity>[1],
  wanted: string,
  least: 'zero' | 'above zero',
  most: { readonly value: number; readonly text: string } | null = null,
  plain: (text: string) => string = (text) => text,
): Reader<number> {
  return (at, { report }) => {
    const found = at.kind === 'text' ? String(at.value) : at.kind === 'number' ? at.source : null
    if (found === null) return refuse(at, report, wanted)
    const { value, fault } = parseQuantity(plain(found), of)
    if (fault !== null) report.add(at, fault.sentence, fault.start, fault.length)
    else if (value === 0 && least === 'above zero') report.add(at, say.zero(found))
    else if (most !== null && value > most.value) report.add(at, say.tooBig(found, most.text))
    else return value
    return undefined
  }
}

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

const PER = { once: '', hour: '/h', year: '/year' } as const
const MONEY = /^([+-]?\d[\d.,\s\u202f']*)\s*([^\d\s/±.,+-]+)?\s*(\/\s*\w+)?\s*(?:(?:±|\+\/-)\s*(.+))?$/u

/** An amount of money, once, an hour or a year, and how far it may be off: `38 €/h ± 5 %` or `38 €/h +/- 5 %`. All amounts of a file are in one currency. */
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
    if (match === null) return fail(say.notANumber(written, `410000 ${currency}${tail}${/[+±]/.test(written) ? ' ± 20 %' : ''}`))
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
