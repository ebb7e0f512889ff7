/** Timers by slot. (MODEL.md §1) */

/**
 * Where the slots of each kind begin, in this order: breakdown sources from 0 on, the breaks, safety stops and their resets by carrier, arrivals by path, clears by
 * zone, work by station, changes by zone, arrivals in the store by carrier, walks by operator, products by supply, receivers by station. Of those that are due at one
 * instant the lower slot ends first. Then what is kept by slot.
 */
export interface Slots {
  readonly breakSlot: number
  readonly safetySlot: number
  readonly resetSlot: number
  readonly arrivalSlot: number
  readonly clearSlot: number
  readonly workSlot: number
  readonly changeSlot: number
  readonly storeSlot: number
  readonly operatorSlot: number
  readonly supplySlot: number
  readonly receiverSlot: number
  /** seconds left of a timer that is held; length slots; meaning only while isHeldBack */
  readonly left: Float64Array
  /** 1: the timer is held and goes on with `left` */
  readonly isHeldBack: Uint8Array
  /** slots that fall due at one instant, sorted before they are handled */
  readonly due: Int32Array
}
