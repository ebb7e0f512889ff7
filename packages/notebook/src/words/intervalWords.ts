import type { OutputInterval } from '@loopwright/stats'

/** What to know of an interval of a mean before trusting it; nothing where it keeps its word. */
export function intervalCaution({ n, status }: Pick<OutputInterval, 'n' | 'status'>): string {
  switch (status) {
    case 'few replications':
      return ` With ${n} the interval is rough: 30 are usual.`
    case 'skewed':
      return ' A few windows are far worse than the rest (rare long stops, for instance): with so few of them the true mean may well lie below the interval.'
    default:
      return ''
  }
}
