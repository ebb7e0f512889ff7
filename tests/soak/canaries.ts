/** Deliberately broken engines, each by one change of its source: the soak must find every one of them. */
import type { Kind } from './checks.ts'

export interface Canary {
  readonly name: string
  /** the kind of case that meets it soonest */
  readonly foundBy: Kind
  /** file of the line package that is changed */
  readonly file: string
  /** stands in the file exactly once */
  readonly find: string
  readonly replace: string
}

export const CANARIES: readonly Canary[] = [
  {
    name: 'a lost wake-up: who waits for every third zone is not told that it is free',
    foundBy: 'a loop against the reading aloud',
    file: 'zone.ts',
    find: 'wake(line, items[k]!)',
    replace: 'zone % 3 === 0 || wake(line, items[k]!)',
  },
  {
    name: 'the order within an instant: of two stations that can work the higher one begins',
    foundBy: 'a general line against the reading aloud',
    file: 'lowestFirst.ts',
    find: 'if (parent < index) break',
    replace: 'if (parent > index) break',
  },
  {
    name: 'the order within an instant: carriers that look brake before the moves start',
    foundBy: 'a loop against the reading aloud',
    file: 'instant.ts',
    find: '    while (startFirst(line)) {\n',
    replace: '    if (moves.lookList.length > 1) brakeAll(line)\n    while (startFirst(line)) {\n',
  },
  {
    name: 'a clear released too early: before the transfer has turned back',
    foundBy: 'a general line against the reading aloud',
    file: 'transfer.ts',
    find: 'transfers.backPosition[zone] === transfers.zonePosition[zone]',
    replace: 'true',
  },
  {
    name: 'a stream shared by all stations: their releases',
    foundBy: 'a loop against the reading aloud',
    file: 'columns.ts',
    find: 'names.of(`release/$' + '{station.name}`)',
    replace: "names.of('release')",
  },
  {
    name: 'a stop that lengthens what it holds',
    foundBy: 'a loop against the reading aloud',
    file: 'timer.ts',
    find: 'slots.left[slot] = left\n',
    replace: 'slots.left[slot] = left + 0.5\n',
  },
  {
    name: 'a product that comes wakes no station',
    foundBy: 'a general line against the reading aloud',
    file: 'arrivals.ts',
    find: '    line.calls.asideDue = true\n',
    replace: '',
  },
  {
    name: 'an operator who is free and not sent again',
    foundBy: 'a general line against the reading aloud',
    file: 'operators.ts',
    find: '  staff.operatorTask[operator] = NONE\n  line.calls.sendDue = true\n',
    replace: '  staff.operatorTask[operator] = NONE\n',
  },
  {
    name: 'a section that stops one zone too few',
    foundBy: 'a general line against the reading aloud',
    file: 'stop.ts',
    find: 'for (let k = first[section]!; k < first[section + 1]!; k++) holdZone(line, items[k]!)',
    replace: 'for (let k = first[section]! + 1; k < first[section + 1]!; k++) holdZone(line, items[k]!)',
  },
]
