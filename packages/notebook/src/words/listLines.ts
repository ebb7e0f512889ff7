/**
 * Lines as a list of Markdown; of many the first, and how many more there are.
 *
 * @param most  that are listed, ≥ 1
 * @param of    what stands behind the number of the others, such as " of 40 settings"
 * @example listLines(['a', 'b', 'c', 'd'], 2) // => '- a\n- b\n- and 2 more'
 */
export function listLines(lines: readonly string[], most: number, of = ''): string {
  const left = lines.length > most ? [`and ${lines.length - most} more${of}`] : []
  return [...lines.slice(0, most), ...left].map((line) => `- ${line}`).join('\n')
}
