/** The steps of a notebook's body, carried out one after the other; one that fails is told in its place and takes down only what needs it. */
import type { FaultCell } from '../cells/cell.ts'
import { type Fault, frameText, placeText } from '../load/fault.ts'
import type { StepMark } from '../load/steps.ts'
import { type Places, thrownFault } from '../load/thrownFault.ts'

/** What a body that was split calls for each step. */
export interface Steps {
  /** @returns true where the body ends here */
  (mark: StepMark, run: () => Promise<unknown>): Promise<boolean>
  /** what a step gives back unless it ends the body */
  readonly next: symbol
}

/** How a step stands. */
export type StepState = 'running' | 'done' | 'failed' | 'waiting'

export interface StepParts {
  /** the notebook, as its faults shall show it */
  readonly file: string
  readonly places: Places | undefined
  readonly show: (cell: FaultCell) => void
  /** told of each step as it begins and ends */
  readonly onStep?: ((mark: StepMark, state: StepState) => void) | undefined
  /** waits for what the step asked for and did not wait for */
  readonly settle?: () => Promise<void>
  readonly signal: AbortSignal
}

export interface Stepper {
  readonly steps: Steps
  /** of steps that failed themselves */
  readonly faults: readonly Fault[]
  /** takes what the body throws outside of its steps */
  readonly fail: (error: unknown) => void
}

const START = { line: 1, column: 1 }

export function stepper(parts: StepParts): Stepper {
  const faults: Fault[] = []
  /** line of the step that should have set it, by name */
  const missing = new Map<string, number>()
  const next = Symbol('next')
  let told = 0
  const tell = (fault: Fault, waiting: boolean): void => {
    told += 1
    parts.show({
      kind: 'fault',
      id: `fault-${told}`,
      place: placeText(fault),
      message: fault.message,
      frame: frameText(fault),
      fix: fault.fix,
      waiting,
    })
  }
  const fail = (error: unknown, mark: Pick<StepMark, 'line' | 'column'> = START): void => {
    const fault = thrownFault(error, mark, parts)
    faults.push(fault)
    tell(fault, false)
  }
  const lose = (mark: StepMark, line: number): void => {
    for (const name of mark.gives) missing.set(name, line)
  }
  const steps = async (mark: StepMark, run: () => Promise<unknown>): Promise<boolean> => {
    const needs = mark.uses.filter((name) => missing.has(name) && !mark.gives.includes(name))
    const [first] = needs
    if (first !== undefined) {
      const line = missing.get(first)!
      lose(mark, line)
      const { file } = parts
      const { line: at, column } = mark
      const message = `not carried out: it needs "${first}", and line ${line} failed`
      tell({ file, line: at, column, length: 1, source: '', message, fix: '' }, true)
      parts.onStep?.(mark, 'waiting')
      return false
    }
    parts.onStep?.(mark, 'running')
    try {
      const ended = (await run()) !== next
      await parts.settle?.()
      for (const name of mark.gives) missing.delete(name)
      parts.onStep?.(mark, 'done')
      return ended
    } catch (error) {
      if (parts.signal.aborted) return true
      fail(error, mark)
      lose(mark, mark.line)
      parts.onStep?.(mark, 'failed')
      return false
    }
  }
  return { steps: Object.assign(steps, { next }), faults, fail }
}
