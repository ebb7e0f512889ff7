/** What is typed behind `--name` at a program of the tests; undefined: nothing is. */
export function typedOption(name: string): string | undefined {
  const at = process.argv.indexOf(`--${name}`)
  return at < 0 ? undefined : process.argv[at + 1]
}
