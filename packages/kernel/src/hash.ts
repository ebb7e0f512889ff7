/**
 * A running hash of numbers, for telling whether two runs did the same in the same order. 64 bits of state in two halves (multiply and rotate); not for security.
 */
export class RunningHash {
  private low = 0x811c9dc5
  private high = 0x9747b28c
  private readonly number = new Float64Array(1)
  private readonly words = new Uint32Array(this.number.buffer)

  reset(): void {
    this.low = 0x811c9dc5
    this.high = 0x9747b28c
  }

  /** @param value  whole number, 32 bits of it count */
  addInteger(value: number): void {
    this.low = Math.imul(this.low ^ value, 0x01000193)
    this.high = Math.imul(((this.high << 13) | (this.high >>> 19)) ^ value ^ this.low, 0x85ebca6b)
  }

  /** Adds all 64 bits of a double. */
  addNumber(value: number): void {
    this.number[0] = value
    this.addInteger(this.words[0]!)
    this.addInteger(this.words[1]!)
  }

  /** 16 hexadecimal digits */
  digest(): string {
    return (this.high >>> 0).toString(16).padStart(8, '0') + (this.low >>> 0).toString(16).padStart(8, '0')
  }
}
