/** Corners: transfers of one kind, by the names of their zones. */
import type { TransferSpec } from '@loopwright/line'
import { joinPath, type Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { booleanOf, child, type Context, listed, quantity, textOf } from '../context.ts'
import { findZone, type ZoneDraft } from './zoneDraft.ts'

export function readCorners(context: Context, root: Located, drafts: readonly ZoneDraft[]): void {
  const cornered = new Set<number>()
  for (const group of listed(child(root, 'corners'))) {
    const transfer = readTransfer(context, group)
    const sensorAt = child(group, 'sensorBeforeStop')
    const sensor = sensorAt === null ? 0 : quantity(context, sensorAt, 'length', 'zero')
    const turn = readTurn(child(group, 'turn'))
    for (const at of child(group, 'zones')?.items ?? []) {
      const index = findZone(context, at, drafts)
      if (index === null) continue
      if (cornered.has(index)) {
        context.report.add(at, say.transferTwice(drafts[index]!.name))
        continue
      }
      cornered.add(index)
      const zone = drafts[index]!
      zone.transfer = transfer
      zone.sensor = sensor
      zone.turn = turn
      const path = joinPath('zones', zone.name)
      const defaulted = (key: string): string => (group.entries.has(key) ? 'corners' : 'default')
      for (const key of ['lift', 'lower']) context.origins.set(`${path}.transfer.${key}`, 'corners')
      context.origins.set(`${path}.transfer.enterOnlyIfExitClear`, defaulted('enterOnlyIfExitClear'))
      context.origins.set(`${path}.sensorBeforeStop`, sensorAt === null ? 'default of a transfer' : 'corners')
      context.origins.set(`${path}.turn`, 'corners')
    }
  }
}

export function readTransfer(context: Context, at: Located): TransferSpec | undefined {
  const liftSeconds = quantity(context, child(at, 'lift'), 'duration', 'zero')
  const lowerSeconds = quantity(context, child(at, 'lower'), 'duration', 'zero')
  if (liftSeconds === undefined || lowerSeconds === undefined) return undefined
  return { liftSeconds, lowerSeconds, enterOnlyIfExitClear: booleanOf(child(at, 'enterOnlyIfExitClear')) ?? false }
}

export function readTurn(at: Located | null): 'left' | 'right' | null {
  const turn = textOf(at)
  return turn === 'left' || turn === 'right' ? turn : null
}
