/** Where the commands of a guide are carried out: in a folder, typed; or in memory, by the command's own program, which takes no process and no thread. */
import { spawnSync } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import type { Store } from '@loopwright/study/machine'
import { main } from '../../packages/cli/src/main.ts'
import { BIN, type Ended } from '../cli/spawned.ts'
import { memoryShell } from '../helpers/memoryShell.ts'
import { TOP } from '../tidy/sources.ts'

export interface Place {
  readonly carryOut: (words: readonly string[]) => Promise<Ended>
  readonly read: (file: string) => string
  /** @throws Error  where there is such a file */
  readonly write: (file: string, text: string) => void
  /** nothing of it is left */
  readonly leave: () => void
}

/** folders that a reader has who follows a guide */
const PARTS = ['scenarios', 'notebooks']

/** As it is typed, in a folder whose name has blanks and umlauts. */
export function folderPlace(): Place {
  const folder = mkdtempSync(join(tmpdir(), 'guides für alle '))
  for (const part of PARTS) cpSync(join(TOP, part), join(folder, part), { recursive: true })
  return {
    carryOut: async (words) => {
      const { status, stdout, stderr } = spawnSync(process.execPath, [BIN, ...words], {
        cwd: folder,
        encoding: 'utf8',
        env: { ...process.env, NO_COLOR: '1' },
      })
      return { code: status, out: stdout, err: stderr }
    },
    read: (file) => readFileSync(join(folder, file), 'utf8'),
    write: (file, text) => {
      const path = join(folder, file)
      mkdirSync(dirname(path), { recursive: true })
      if (existsSync(path)) throw new Error(`"${file}" is there already`)
      writeFileSync(path, text)
    },
    leave: () => rmSync(folder, { recursive: true, force: true }),
  }
}

/** @param store  of the runs of all such places: what several guides run is run once */
export function memoryPlace(store: Store): Place {
  const shell = memoryShell(Object.fromEntries(PARTS.flatMap(filesOf)), { store })
  return {
    carryOut: async (words) => {
      shell.said.out = ''
      shell.said.err = ''
      const code = await main(words, { ...shell, readBeside: (namedIn, path) => shell.files.get(join(dirname(namedIn), path)) ?? null })
      return { code, ...shell.said }
    },
    read: (file) => {
      const text = shell.files.get(file)
      if (text === undefined) throw new Error(`there is no file "${file}"`)
      return text
    },
    write: (file, text) => {
      if (shell.files.has(file)) throw new Error(`"${file}" is there already`)
      shell.files.set(file, text)
    },
    leave: () => shell.files.clear(),
  }
}

const filesOf = (folder: string): [name: string, text: string][] =>
  readdirSync(join(TOP, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => [
      path
        .slice(TOP.length)
        .replace(/^[\\/]/, '')
        .replaceAll('\\', '/'),
      readFileSync(path, 'utf8'),
    ])
