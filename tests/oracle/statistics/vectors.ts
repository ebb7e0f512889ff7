import { readFileSync } from 'node:fs'
import { expect } from 'vitest'

/** One worked case: what goes in, what an independent program got. Stations, systems, ranks and rows count from 1 unless the kind says otherwise; null: there is none. */
export interface Case {
  readonly id: string
  readonly kind: string
  // biome-ignore lint/suspicious/noExplicitAny: each kind of case has its own shape
  readonly input: any
  // biome-ignore lint/suspicious/noExplicitAny: each kind of case has its own shape
  readonly expect: any
  readonly source?: string
  readonly tolerance?: number
}

/** The cases of vectors/<name>.json, which names their publication, the program that made the numbers, and the tolerance. */
export function readCases(name: string, kind?: string): Case[] {
  const file = JSON.parse(readFileSync(new URL(`./vectors/${name}.json`, import.meta.url), 'utf8')) as { cases: Case[] }
  const cases = kind === undefined ? file.cases : file.cases.filter((one) => one.kind === kind)
  if (cases.length === 0) throw new Error(`no case of kind "${kind}" in vectors/${name}.json`)
  return cases
}

/** |got − want| ≤ tolerance·|want|; where want is 0, |got| ≤ tolerance. */
export function expectRelative(got: number | null | undefined, want: number, tolerance: number): void {
  expectWithin(got, want, tolerance * (want === 0 ? 1 : Math.abs(want)))
}

/** For a difference of nearly equal numbers: |got − want| ≤ tolerance·max(1, |want|). */
export function expectOfSize(got: number | null | undefined, want: number, tolerance: number): void {
  expectWithin(got, want, tolerance * Math.max(1, Math.abs(want)))
}

function expectWithin(got: number | null | undefined, want: number, allowed: number): void {
  expect(typeof got).toBe('number')
  const off = Math.abs((got as number) - want)
  if (!(off <= allowed)) expect.fail(`got ${got}, want ${want}: off by ${off}, allowed ${allowed}`)
}
