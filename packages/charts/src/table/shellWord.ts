/**
 * A word as a shell takes it: quoted where it is more than letters, digits and a few signs.
 *
 * @example shellWord('my line.yaml') // => "'my line.yaml'"
 */
export function shellWord(text: string): string {
  return /^[\w./:@%+=,-]+$/.test(text) ? text : `'${text.replaceAll("'", `'\\''`)}'`
}
