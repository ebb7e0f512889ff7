/** The shell as Node gives it. */
import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { LoadedNotebook } from '@loopwright/notebook/machine'
import { visibleStyled } from '@loopwright/charts/table'
import { breakable } from './inOneGo.ts'
import { checkWritable, listFolder, READ_MAX, readBeside, readWhole, readWholeBytes, TABLE_BYTES_MAX, writeWhole } from './nodeFiles.ts'
import { foundChromium, NO_CHROMIUM, printPdf } from './printPdf.ts'
import { STDIN, standardInput } from './standardInput.ts'
import { INTERRUPTED, type NotebookThreadOptions, type Shell, type Stream, type TypesPlace } from './shell.ts'
import { colourWanted, columnsOf } from './terminalLook.ts'

/** milliseconds after which a second Ctrl-C no longer can be the echo of the first: it ends the command on the spot */
const INSIST_MS = 1000

export interface NodeShell extends Shell {
  /** Resolves when all results have left; with a sentence where they could not. */
  readonly written: () => Promise<string | null>
}

export function nodeShell(): NodeShell {
  const stop = new AbortController()
  let stoppedAt = Number.POSITIVE_INFINITY
  /** true: an echo */
  const onStop = (): boolean => {
    if (performance.now() - stoppedAt > INSIST_MS) process.exit(INTERRUPTED)
    const isEcho = stop.signal.aborted
    stoppedAt = Math.min(stoppedAt, performance.now())
    stop.abort()
    return isEcho
  }
  process.on('SIGINT', onStop)
  process.on('SIGTERM', onStop)
  const results = nodeStream(process.stdout)
  const err = nodeStream(process.stderr).stream
  const input = standardInput(() => process.stdin, err.write, stop.signal)
  return {
    out: results.stream,
    err,
    written: results.written,
    readFile: async (path) => (path === STDIN ? (await input(READ_MAX)).toString('utf8') : await readWhole(path)),
    readBytes: async (path) => (path === STDIN ? await input(TABLE_BYTES_MAX) : await readWholeBytes(path)),
    listFolder,
    readBeside,
    writeFile: writeWhole,
    checkWritable,
    loadNotebook: loadModule,
    typesFor,
    startNotebookThread,
    cannotPrint: () => (foundChromium(process.env) === null ? NO_CHROMIUM : null),
    printPdf: async (html) => await printPdf(foundChromium(process.env) ?? '', html, process.getuid?.() === 0),
    openPage: (path) => started(...opener(process.platform, /^https?:/.test(path) ? path : resolve(path))),
    openStore: async (folder) => (await import('@loopwright/study/machine')).folderStore(folder),
    now: () => performance.now(),
    today: () => new Date(),
    environment: (name) => process.env[name],
    signal: stop.signal,
    inOneGo: breakable(onStop),
  }
}

/**
 * A stream, and what became of it. A reader that has gone away (`| head`) is no error: what is left is not written. Whatever else keeps results from being
 * written is told in the end.
 */
function nodeStream(stream: NodeJS.WriteStream): { stream: Stream; written: () => Promise<string | null> } {
  let fault: NodeJS.ErrnoException | null = null
  stream.on('error', (error: NodeJS.ErrnoException) => {
    fault ??= error
  })
  return {
    stream: {
      write: (text) => {
        if (fault === null) stream.write(visibleStyled(text))
      },
      isTerminal: stream.isTTY === true,
      colour: colourWanted(process.env, stream.isTTY === true),
      get columns() {
        return columnsOf(stream.isTTY === true ? stream.columns : undefined)
      },
    },
    written: async () => {
      if (fault === null) await new Promise<void>((resolve) => stream.write('', () => resolve()))
      if (fault === null || fault.code === 'EPIPE') return null
      const { faultWords } = await import('@loopwright/study/machine')
      return `the results could not be written to standard output: ${faultWords(fault)}`
    },
  }
}

/** What opens a page, as each system calls it. */
function opener(platform: NodeJS.Platform, path: string): [command: string, words: readonly string[]] {
  if (platform === 'darwin') return ['open', [path]]
  // `start` belongs to the command interpreter, which would read signs such as & in a path
  if (platform === 'win32') return ['rundll32', ['url.dll,FileProtocolHandler', path]]
  return ['xdg-open', [path]]
}

/** milliseconds after which a command that has not failed is on its way */
const STARTED_MS = 1500

/** True where the command could be started and did not fail at once; it goes on without us. */
function started(command: string, words: readonly string[]): Promise<boolean> {
  return new Promise((resolve) => {
    const child = spawn(command, words, { stdio: 'ignore', detached: true })
    const waited = setTimeout(() => resolve(true), STARTED_MS)
    const end = (did: boolean): void => {
      clearTimeout(waited)
      resolve(did)
    }
    child.on('error', () => end(false))
    child.on('exit', (code) => end(code === 0))
    child.unref()
  })
}

/** A notebook gets the packages that run already, from wherever it lies. */
export async function loadModule(path: string): Promise<LoadedNotebook> {
  await readWhole(path)
  const { loadNotebook } = await import('@loopwright/notebook/machine')
  process.setSourceMapsEnabled(true)
  if (bundled())
    return await loadNotebook(path, {
      ours: (name) => new URL(`./${name}.js`, import.meta.url).href,
      importFile: (address) => import(address),
    })
  const { register } = await import('tsx/esm/api')
  return await loadNotebook(path, {
    ours: (name) => import.meta.resolve(`@loopwright/${name}`),
    importFile: async (address) => {
      const unregister = register()
      try {
        return await import(address)
      } finally {
        await unregister()
      }
    },
  })
}

/** True where all packages lie side by side in one folder, bundled. */
const bundled = (): boolean => existsSync(new URL('./notebook.js', import.meta.url))

/** The command's own file once more, in a thread; see `cli.ts`. */
function startNotebookThread(workerData: NotebookThreadOptions): Worker {
  if (bundled()) return new Worker(new URL('./cli.js', import.meta.url), { workerData })
  const [loader, file] = [import.meta.resolve('tsx/esm/api'), new URL('../cli.ts', import.meta.url).href]
  const code = `import { register } from ${JSON.stringify(loader)}\nregister()\nawait import(${JSON.stringify(file)})`
  const execArgv = [...process.execArgv, '--conditions=loopwright-source']
  return new Worker(new URL(`data:text/javascript,${encodeURIComponent(code)}`), { workerData, execArgv })
}

function typesFor(folder: string): TypesPlace | null {
  if (packagesAbove(resolve(folder)) !== null) return null
  const ours = packagesAbove(dirname(fileURLToPath(import.meta.url)))
  if (ours === null) return null
  const source = !existsSync(join(ours, 'notebook/dist/index.d.ts'))
  return { pattern: join(ours, '*', source ? 'src/index.ts' : 'dist/index.d.ts'), source }
}

/** The folder with these packages that a module in a folder would find. */
function packagesAbove(folder: string): string | null {
  const here = join(folder, 'node_modules/@loopwright')
  if (existsSync(join(here, 'notebook/package.json'))) return here
  return dirname(folder) === folder ? null : packagesAbove(dirname(folder))
}
