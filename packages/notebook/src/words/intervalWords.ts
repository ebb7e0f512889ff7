import type { OutputInterval } from '@loopwright/stats'

/** How many replications are usual before the interval of a mean is trusted. */
const USUAL = 30

/** below these the status of an interval is `few replications` */
const FEW = 10

/** What to know of an interval of a mean before trusting it; nothing where it keeps its word. */
export function intervalCaution({ n, status, mean, halfWidth }: Pick<OutputInterval, 'n' | 'status' | 'mean' | 'halfWidth'>): string {
  switch (status) {
    case 'few replications':
      return isWide({ mean, halfWidth })
        ? ` With ${n} the interval is more than half as large as the number itself, which says next to nothing: simulate more, ${USUAL} are usual.`
        : ` With ${n} the interval is rough, and what is rare may not be among them: ${USUAL} are usual.`
    case 'skewed':
      return ' A few windows are far worse than the rest (rare long stops, for instance): with so few of them the true mean may well lie below the interval.'
    default:
      return ''
  }
}

/** The same of intervals around several numbers from the same replications. */
export function intervalsCaution(n: number, numbers: readonly Pick<OutputInterval, 'mean' | 'halfWidth'>[], many: string): string {
  if (n >= FEW) return ''
  return numbers.some(isWide)
    ? ` With as few as ${n} ${many} an interval that is more than half as large as its number says next to nothing: simulate more, ${USUAL} are usual.`
    : ` With as few as ${n} ${many} the intervals are rough, and what is rare may not be among them: ${USUAL} are usual.`
}

/** It reaches from less than half of the number to more than one and a half of it. */
const isWide = ({ mean, halfWidth }: Pick<OutputInterval, 'mean' | 'halfWidth'>): boolean => halfWidth > 0 && halfWidth > mean / 2
