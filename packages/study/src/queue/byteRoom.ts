/** Room for so many bytes: who finds none waits, first come first served. */
export class ByteRoom {
  readonly #most: number
  readonly #waiting: { readonly bytes: number; readonly enter: () => void }[] = []
  #taken = 0

  /** @param most  bytes at once; what is larger goes in when nobody else is in */
  constructor(most: number) {
    this.#most = most
  }

  /** Waits until there is room for so many bytes, and takes it. */
  async enter(bytes: number): Promise<void> {
    if (this.#waiting.length > 0 || !this.#has(bytes)) await new Promise<void>((enter) => this.#waiting.push({ bytes, enter }))
    else this.#taken += bytes
  }

  /** Gives the room of so many bytes back: all for whom there is room then go in. */
  leave(bytes: number): void {
    this.#taken -= bytes
    while (this.#waiting.length > 0 && this.#has(this.#waiting[0]!.bytes)) {
      const next = this.#waiting.shift()!
      this.#taken += next.bytes
      next.enter()
    }
  }

  #has(bytes: number): boolean {
    return this.#taken === 0 || this.#taken + bytes <= this.#most
  }
}
