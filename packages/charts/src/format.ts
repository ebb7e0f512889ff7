/** Numbers as people read them: rounded by their interval, thin spaces between thousands, units beside them. */

/** 1234.5 → "1 234.5" with a thin no-break space. */
export function formatNumber(_value: number, _decimals: number): string {
  throw new Error('under construction')
}

/** "330 ± 1": both rounded by the half-width. */
export function formatWithHalfWidth(_value: number, _halfWidth: number, _decimalsMax = 0): string {
  throw new Error('under construction')
}

/** 0.834 → "83 %"; never "0 %" or "100 %" of what is not all or nothing. */
export function formatShare(_share: number): string {
  throw new Error('under construction')
}

/** Seconds as "42 s", "12.5 min" or "7.5 h". */
export function formatDuration(_seconds: number): string {
  throw new Error('under construction')
}
