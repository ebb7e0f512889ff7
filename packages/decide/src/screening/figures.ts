/** How many figures fell where: a figure that several sources judge is one figure. */
import { GUIDANCE_WORDS, type GuidanceWord, type ScreeningFinding } from './finding.ts'

/**
 * What each figure is of, under the word that counts: above where one source says so, else within where one says so.
 *
 * @example figuresByWord([{ what: 'hands', word: 'above guidance value' }, { what: 'hands', word: 'within guidance value' }])['within guidance value'] // => []
 */
export function figuresByWord(
  findings: readonly Pick<ScreeningFinding, 'what' | 'word'>[],
): Readonly<Record<GuidanceWord, readonly string[]>> {
  const told = new Map<string, GuidanceWord>()
  for (const word of GUIDANCE_WORDS)
    for (const finding of findings) if (finding.word === word && !told.has(finding.what)) told.set(finding.what, word)
  const of = (word: GuidanceWord): string[] => [...told].filter(([, one]) => one === word).map(([what]) => what)
  return Object.fromEntries(GUIDANCE_WORDS.map((word) => [word, of(word)])) as Record<GuidanceWord, string[]>
}
