/** The lines of a study, each told to the server once before the first job that names it. */
import type { LineSpec } from '@loopwright/line'
import type { Redis } from 'ioredis'
import { type Job, KEPT_SECONDS, lineDigest, lineKey } from './job.ts'
import { lineText } from './lineText.ts'

/** A line, as the study and the server call it. */
export interface ToldLine {
  readonly spec: LineSpec
  readonly text: string
  readonly digest: string
  told: boolean
}

/** Lines by the numbers that a study gives them. */
export interface ToldLines {
  /** number of the line, from 0; the same for the same line */
  readonly place: (spec: LineSpec) => number
  readonly at: (place: number) => ToldLine
  /** tells the lines of these jobs that the server does not know yet */
  readonly tellFor: (jobs: readonly Pick<Job, 'line'>[]) => Promise<void>
}

/** Lines to be told to a server; one that was away has forgotten them. */
export function toldLines(redis: Pick<Redis, 'set' | 'on'>): ToldLines {
  const lines: ToldLine[] = []
  redis.on('ready', () => {
    for (const line of lines) line.told = false
  })
  return {
    place(spec) {
      const before = lines.findIndex((line) => line.spec === spec)
      if (before >= 0) return before
      const text = lineText(spec)
      return lines.push({ spec, text, digest: lineDigest(text), told: false }) - 1
    },
    at: (place) => lines[place]!,
    async tellFor(jobs) {
      for (const line of lines) {
        if (line.told || !jobs.some((job) => job.line === line.digest)) continue
        await redis.set(lineKey(line.digest), line.text, 'EX', KEPT_SECONDS)
        line.told = true
      }
    },
  }
}
