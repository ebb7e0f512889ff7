/** What the reader of a page may change, where the notebook itself says so. */
import { nearest } from '@loopwright/scenario'
import type { LiveInput } from '../live/liveInput.ts'
import { type InputSource, inputsOf } from '../live/liveInputs.ts'
import { Mistake } from '../load/fault.ts'
import { checkNames, shown } from '../runner/knownNames.ts'

/** From where to where, in the unit in which the reader sees it. */
export interface InputRange {
  readonly from: number
  readonly to: number
  readonly step: number
  /** such as `m/min`; default: none */
  readonly unit?: string
  /** default: as the page calls it, or the path */
  readonly label?: string
}

/** A number with what stands behind it. */
const NUMBER = /^\s*(-?\d+(?:\.\d+)?)\s*(.*?)\s*$/

/**
 * A control of the page for a value of the scenario.
 *
 * @param name  as the page names it (`carriers`, `speed`, `S6.time`), or a path of the scenario file (`drive.speed`)
 * @throws RangeError  if the scenario has no such value, or the range is none
 */
export function ownInput(source: InputSource, name: string, range: InputRange): LiveInput {
  checkNames(`input('${name}')`, range ?? null, ['from', 'to', 'step', 'unit', 'label'])
  const { from, to, step, unit = '' } = range
  for (const [what, value] of Object.entries({ from, to, step }))
    if (typeof value !== 'number' || !Number.isFinite(value))
      throw new Mistake(
        `input('${name}'): ${what} is ${shown(value)}, not a number`,
        'Write numbers: `{ from: 8, to: 20, step: 1 }`.',
        what,
      )
  if (from >= to) throw new Mistake(`input('${name}'): from ${from} to ${to} is no range`, 'The smaller one comes first.', 'from')
  if (step <= 0 || step > to - from)
    throw new Mistake(`input('${name}'): a step of ${step} does not fit between ${from} and ${to}`, 'Write a smaller one above 0.', 'step')
  const shownAs = { kind: 'range', from, to, step, unit } as const
  const group = 'Of this notebook'
  const usual = inputsOf(source)
  const own = usual.find(({ key }) => key === name)
  if (own !== undefined) {
    if (own.shown.kind !== 'range')
      throw new Mistake(`input('${name}'): its values are words, not a range`, 'The page offers them by itself.', name)
    if (unit !== '' && own.shown.unit !== unit)
      throw new Mistake(
        `input('${name}'): the scenario says it in ${own.shown.unit || 'numbers without a unit'}, not in ${unit}`,
        `Write \`unit: '${own.shown.unit}'\`.`,
        unit,
      )
    return { ...own, group, label: range.label ?? own.label, shown: { ...shownAs, unit: own.shown.unit } }
  }
  const value = source.values(name)
  const written = typeof value === 'number' ? [String(value), String(value), ''] : typeof value === 'string' ? NUMBER.exec(value) : null
  if (written === null) {
    const known = usual.flatMap(({ key, shown: field }) => (field.kind === 'range' ? [key] : []))
    const near = nearest(name, known)
    const all = `It may be ${known.join(', ')}, or a path of the scenario file that holds one number, such as drive.speed.`
    throw new Mistake(`the scenario has no number called ${shown(name)}`, near === null ? all : `Did you mean "${near}"? ${all}`, name)
  }
  if (unit !== '' && written[2] !== unit)
    throw new Mistake(`input('${name}'): the scenario says ${value}, not a number in ${unit}`, `Write \`unit: '${written[2]}'\`.`, unit)
  return {
    key: name,
    group,
    label: range.label ?? name,
    file: `${written[1]}${written[2] === '' ? '' : ` ${written[2]}`}`,
    shown: { ...shownAs, unit: written[2] ?? '' },
    does: { kind: 'path', path: name },
  }
}
