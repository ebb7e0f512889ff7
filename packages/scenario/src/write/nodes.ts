/** YAML nodes with remarks behind their values. */
import { isScalar, Pair, Scalar, YAMLMap, YAMLSeq } from 'yaml'
import { joinPath } from '../text/located.ts'

/** Remark behind a value, by its path; empty for none. */
export type Remarks = (path: string) => string

export type Value = Scalar | YAMLMap | YAMLSeq

export const NO_REMARKS: Remarks = () => ''

/** One value per line with its remark, or zones and paths on one line each. */
export interface Style {
  readonly remarks: Remarks
  readonly wide: boolean
}

export const text = (value: string): Scalar => new Scalar(value)
export const number = (value: number): Scalar => new Scalar(value)
export const flag = (value: boolean): Scalar => new Scalar(value)
export const seconds = (value: number): Scalar => text(`${value} s`)
export const metres = (value: number | null): Scalar => text(value === null ? 'none' : `${value} m`)

/** Keys whose value is null are left out. A name that YAML would take for a merge sign is put in quotes. */
export function map(path: string, style: Style, entries: readonly (readonly [string, Value | null])[], oneLine = false): YAMLMap {
  const node = new YAMLMap()
  node.flow = oneLine || entries.length === 0
  const keys = new Set<string>()
  for (const [key, value] of entries) {
    if (value === null) continue
    const name = new Scalar(key)
    if (key === '<<') name.type = Scalar.QUOTE_DOUBLE
    const remark = style.remarks(joinPath(path, key))
    if (remark !== '' && (isScalar(value) || value.flow)) value.comment = ` ${remark}`
    else if (remark !== '') name.comment = ` ${remark}`
    // as `add` refuses it, which looks through all keys before each
    if (keys.has(key)) throw new Error(`Key ${key} already set`)
    keys.add(key)
    node.items.push(new Pair(name, value))
  }
  return node
}

export const flow = (entries: readonly (readonly [string, Value | null])[]): YAMLMap =>
  map('', { remarks: NO_REMARKS, wide: false }, entries, true)

export function list(path: string, style: Style, items: readonly Value[]): YAMLSeq {
  const node = new YAMLSeq()
  node.flow = items.length === 0
  node.items = [...items]
  const remark = style.remarks(path)
  if (remark !== '' && items.length === 0) node.comment = ` ${remark}`
  return node
}

export function flowList(items: readonly Value[]): YAMLSeq {
  const node = new YAMLSeq()
  node.flow = true
  node.items = [...items]
  return node
}
