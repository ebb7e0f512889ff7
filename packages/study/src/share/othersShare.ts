/** Thrown where a study needs runs that are the share of another machine: its own are done, and it ends here. */
export class OthersShare extends Error {
  override readonly name = 'OthersShare'

  constructor() {
    super(OTHERS_SHARE)
  }
}

/** What it says, where only that is left of it. */
export const OTHERS_SHARE = 'the study needs runs of other shares'

/**
 * By its name, since the pieces of a bundle have each their own copy of a class.
 *
 * @example isOthersShare(new Error('other')) // => false
 */
export const isOthersShare = (error: unknown): error is Error => error instanceof Error && error.name === 'OthersShare'
