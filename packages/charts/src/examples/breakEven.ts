import type { Figure } from '../draw/figure.ts'
import { breakEven } from '../money/breakEven.ts'

/** Invented. */
export function breakEvenExample(): Figure {
  const factors = Array.from({ length: 17 }, (_, step) => (60 + 5 * step) / 100)
  const saved = (factor: number): number => 105_000 * (factor < 0.85 ? 0.02 : (factor - 0.84) / 0.16)
  const line = (
    input: string,
    text: (value: number) => string,
    value: number,
    months: (factor: number) => number | null,
    at: number | null,
  ) => ({
    input,
    text,
    points: factors.map((factor) => ({ factor, value: value * factor, months: months(factor) })),
    breakEven: at,
  })
  return breakEven(
    [
      line(
        'wage',
        (value) => `${value.toFixed(0)} €/h`,
        38,
        (factor) => (12 * 410_000) / (117_000 * factor - 12_000),
        71,
      ),
      line(
        'volume',
        (value) => `${value.toFixed(0)} a shift`,
        320,
        (factor) => (12 * 410_000) / saved(factor),
        336,
      ),
      line(
        'investment',
        (value) => `${Math.round(value / 1000)} 000 €`,
        410_000,
        (factor) => 46.9 * factor,
        210_000,
      ),
    ],
    { name: 'zoned loop', hurdleMonths: 24, months: 46.9 },
  )
}
