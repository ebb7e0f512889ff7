/** What comes over a queue: jobs, lines, answers, who is there, why something failed. */
import { readScenario } from '@loopwright/scenario'
import { thrownFailure } from '../../../packages/study/src/queue/failure.ts'
import { readJob } from '../../../packages/study/src/queue/job.ts'
import { lineText, readLineText } from '../../../packages/study/src/queue/lineText.ts'
import { queueAddress } from '../../../packages/study/src/queue/queueAddress.ts'
import { runKey } from '../../../packages/study/src/store/runKey.ts'
import { EXACT_LINE, OPEN_LINE } from '../../helpers/scenarioTexts.ts'
import { plain, type Reader } from '../reader.ts'

const JOBS = [
  JSON.stringify({
    mark: '0.1.0-0011',
    key: 'ab'.repeat(32),
    line: 'cd'.repeat(32),
    carriers: 4,
    seed: '1',
    from: 50,
    to: 100,
    want: 'rows',
  }),
]

/** null: it is done, or refused by an error of these names */
function doneOrRefused(names: readonly string[], attempt: () => string | null): string | null {
  try {
    return attempt()
  } catch (error) {
    return error instanceof Error && names.includes(error.name) ? null : `an error is thrown: ${(error as Error).stack}`
  }
}

export const job: Reader = plain(JOBS, (text) =>
  doneOrRefused(['RangeError'], () => {
    let data: unknown = text
    try {
      data = JSON.parse(text)
    } catch {}
    const { from, to, key } = readJob(data)
    return from >= 0 && to > from && /^[0-9a-f]{64}$/.test(key) ? null : 'a job that nobody can do'
  }),
)

/** A line may be anything that JSON is: it is told apart from the one that a job names by its key. */
export const lineOfJob: Reader = plain(
  [EXACT_LINE, OPEN_LINE].map((text) => lineText(readScenario(text).scenario!.line)),
  (text) =>
    doneOrRefused(['SyntaxError', 'TypeError', 'RangeError'], () => {
      const spec = readLineText(text)
      return /^[0-9a-f]{64}$/.test(runKey(spec, 3, '1', 'rows')) ? null : 'a key that is none'
    }),
)

export const failure: Reader = plain([JSON.stringify({ name: 'RangeError', message: 'no' }), 'job stalled'], (text) => {
  const error = thrownFailure(text)
  return error === null || (typeof error.message === 'string' && error instanceof Error) ? null : 'no error'
})

export const address: Reader = plain(['redis://127.0.0.1:6379/1', 'rediss://plant-server:6380', 'redis://[::1]'], (text) =>
  doneOrRefused(['RangeError', 'Misuse'], () => {
    const { host, port } = queueAddress(text)
    return host !== '' && port > 0 && port < 65_536 ? null : 'an address that leads nowhere'
  }),
)
