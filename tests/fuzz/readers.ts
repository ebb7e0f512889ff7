/**
 * Whatever reads a text that somebody else may have written. Each is tried with its texts spoilt: it takes them or says in words what is wrong, in bounded
 * time and memory, writes nowhere but where it was told to, and leaves no trace in what all objects share.
 */
import type { Reader } from './reader.ts'
import { commandLine } from './readers/commands.ts'
import { decisionFile, whatIsDecided } from './readers/decisions.ts'
import { pageAddress } from './readers/pages.ts'
import { address, failure, job, lineOfJob } from './readers/queues.ts'
import { scenario, tableBeside, whatIsTold } from './readers/scenarios.ts'
import { watchServer } from './readers/server.ts'
import { storeContent, storeFile, storeMerged } from './readers/stores.ts'
import { orders, stations, stopLog, tasks, times, weeks } from './readers/tables.ts'
import { workbook } from './readers/workbooks.ts'

export const READERS: Readonly<Record<string, Reader>> = {
  scenario,
  'table beside a scenario': tableBeside,
  'what is told of a scenario': whatIsTold,
  'decision file': decisionFile,
  'what is told of a decision': whatIsDecided,
  'command line': commandLine,
  'table of times': times,
  'stop log': stopLog,
  'table of orders': orders,
  'table of weeks': weeks,
  'table of stations': stations,
  'table of tasks': tasks,
  workbook,
  'file of the store': storeFile,
  'content of the store': storeContent,
  'store put together': storeMerged,
  'address of a page': pageAddress,
  'request to the server': watchServer,
  'job of a queue': job,
  'line of a queue': lineOfJob,
  'failure of a queue': failure,
  'address of a queue': address,
}
