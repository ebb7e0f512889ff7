/** Limits that are never told from memory: they are asked for from the user's own copy of the standard. */
import type { Guidance } from './finding.ts'
import type { OwnLimitName, ScreeningInputs } from './inputs.ts'

/** The limit as guidance, or why there is none. */
export function ownLimit(
  { ownCopy }: Pick<ScreeningInputs, 'ownCopy'>,
  limit: OwnLimitName,
  standard: string,
  side: 'at most' | 'at least',
): { readonly guidance: Guidance | null; readonly why: string | null } {
  const own = ownCopy.find((each) => each.limit === limit)
  if (own === undefined)
    return {
      guidance: null,
      why: `the limit is not printed here: read it in your own copy of ${standard}, and write it under "ownCopy: ${limit}:"`,
    }
  return {
    guidance: { value: own.value, upTo: null, side, source: own.source, edition: 'as you read it', evidence: 'your own copy' },
    why: null,
  }
}
