/**
 * The known word that a typo most likely meant.
 *
 * @param word   as written
 * @param known  what could stand there
 * @returns      null where nothing is near: more than a third of the letters would have to change
 * @example nearest('Z-O7', ['Z-06', 'Z-07']) // => 'Z-07'
 */
export function nearest(word: string, known: Iterable<string>): string | null {
  const wanted = fold(word)
  let best: string | null = null
  let bestDistance = Math.max(1, Math.floor(Math.max(wanted.length, 3) / 3)) + 1
  let tried = 0
  for (const candidate of known) {
    if (++tried > 5000) break
    const folded = fold(candidate)
    if (Math.abs(folded.length - wanted.length) >= bestDistance) continue
    const distance = editDistance(wanted, folded) + (candidate.length === word.length ? 0 : 0.1)
    if (distance < bestDistance) {
      best = candidate
      bestDistance = distance
    }
  }
  return best
}

/** Capitals, blanks and the letter O for the digit 0 are no difference. */
function fold(word: string): string {
  return word
    .slice(0, 80)
    .toLowerCase()
    .replace(/[\s_-]+/g, '')
    .replaceAll('o', '0')
}

/** Insertions, deletions, changes, and swaps of two neighbours (optimal string alignment distance). */
function editDistance(a: string, b: string): number {
  let before: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const change = last[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)
      let least = Math.min(change, last[j]! + 1, row[j - 1]! + 1)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, before[j - 2]! + 1)
      row.push(least)
    }
    before = last
    last = row
  }
  return last[b.length]!
}
