/**
 * A shell that keeps in memory what is said and written. Studies run in the thread that calls, since to start one takes longer than most of those of tests;
 * threads are tried by the tests of the pool and by the command as typed.
 */
import { visibleStyled } from '@loopwright/charts/table'
import { callingThread, memoryStore, type Store } from '@loopwright/study/machine'
import { Failure, Misuse, type Shell } from '../../packages/cli/src/shell/shell.ts'

export interface MemoryShell extends Shell {
  readonly said: { out: string; err: string }
  readonly files: Map<string, string>
  /** pages that were opened */
  readonly opened: string[]
  clock: number
}

export interface MemoryShellOptions {
  /** standard error is a terminal. Default: false */
  readonly terminal?: boolean
  /** on both streams. Default: false */
  readonly colour?: boolean
  /** of both streams. Default: 80 */
  readonly columns?: number
  /** files that are no text, such as workbooks */
  readonly bytes?: Readonly<Record<string, Uint8Array>>
  /** there is something that opens pages. Default: true */
  readonly browser?: boolean
  /** runs of other shells. Default: none yet */
  readonly store?: Store
}

export function memoryShell(
  files: Readonly<Record<string, string>> = {},
  { terminal = false, colour = false, columns = 80, browser = true, bytes = {}, store = memoryStore() }: MemoryShellOptions = {},
): MemoryShell {
  const said = { out: '', err: '' }
  const kept = new Map(Object.entries(files))
  const shell: MemoryShell = {
    said,
    files: kept,
    opened: [],
    clock: 0,
    out: {
      write: (text) => {
        said.out += visibleStyled(text)
      },
      isTerminal: false,
      colour,
      columns,
    },
    err: {
      write: (text) => {
        said.err += visibleStyled(text)
      },
      isTerminal: terminal,
      colour,
      columns,
    },
    environment: () => undefined,
    readFile: async (path) => {
      const text = kept.get(path)
      if (text === undefined) throw new Misuse(`there is no file "${path}" here`)
      return text
    },
    readBytes: async (path) => {
      const found = bytes[path] ?? kept.get(path)
      if (found === undefined) throw new Misuse(`there is no file "${path}" here`)
      return typeof found === 'string' ? new TextEncoder().encode(found) : found
    },
    listFolder: async (path) => {
      const found = [...kept.keys(), ...Object.keys(bytes)]
        .filter((name) => name.startsWith(`${path}/`))
        .map((name) => name.slice(path.length + 1))
      if (found.length === 0) throw new Misuse(`there is no folder "${path}" here`)
      return found.filter((name) => !name.includes('/')).sort()
    },
    readBeside: (_, path) => kept.get(path) ?? null,
    writeFile: async (path, content) =>
      void kept.set(path, typeof content === 'string' ? content : Buffer.from(content).toString('latin1')),
    cannotPrint: () => 'nothing here prints',
    printPdf: async () => {
      throw new Failure('nothing here prints')
    },
    checkWritable: async (path) => {
      if (path.startsWith('closed/')) throw new Failure(`"${path}" cannot be written: you may not write or read there`)
    },
    typesFor: () => ({ pattern: '/packages/*/dist/index.d.ts', source: false }),
    startNotebookThread: () => {
      throw new Error('a shell in memory starts no thread')
    },
    loadNotebook: async (path) => {
      throw new Misuse(`there is no file "${path}" here`)
    },
    openPage: async (path) => {
      if (browser) shell.opened.push(path)
      return browser
    },
    openStore: async () => store,
    pool: callingThread(),
    now: () => shell.clock,
    today: () => new Date('2026-01-05T08:00:00Z'),
    signal: new AbortController().signal,
    inOneGo: async (_, work) => work(),
  }
  return shell
}
