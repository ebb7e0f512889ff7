/** All settings of several factors. */

export interface Factor {
  /** what it is called: "carriers", "drive.speed" */
  readonly name: string
  /** as people read them, each once: "10 m/min" */
  readonly levels: readonly string[]
}

/**
 * Places of the levels of every setting of a full factorial, those of the last factor fastest.
 *
 * @example factorial([{ name: 'a', levels: ['x', 'y'] }, { name: 'b', levels: ['1', '2'] }]) // => [[0, 0], [0, 1], [1, 0], [1, 1]]
 */
export function factorial(factors: readonly Factor[]): number[][] {
  let settings: number[][] = [[]]
  for (const { levels } of factors) settings = settings.flatMap((setting) => levels.map((_, level) => [...setting, level]))
  return settings
}
