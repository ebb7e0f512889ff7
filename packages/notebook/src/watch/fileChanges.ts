/** Tells of changes of some files: saved in place, renamed over, deleted, made anew. */
import { dirname, resolve } from 'node:path'
import { watch } from 'chokidar'

export interface FileChanges {
  /** These files count from now on, and no others; whole paths. Of `all`, every file beside them that may be part of a notebook counts. */
  readonly follow: (files: readonly string[], all?: boolean) => void
  readonly close: () => Promise<void>
}

/** what a notebook may be made of */
const KINDS = /\.([cm]?[jt]s|json|ya?ml|csv|tsv|txt)$/i
/** milliseconds without a change, after which a save is over; and after which it is taken for over */
const QUIET_MS = 40
const MOST_MS = 200

/**
 * Watches folders, since an editor may put another file in the place of one that is watched.
 *
 * @param onChange  told once of changes that come together
 */
export async function fileChanges(files: readonly string[], onChange: () => void): Promise<FileChanges> {
  let followed = new Set(files.map((file) => resolve(file)))
  let every = false
  const folders = new Set([...followed].map((file) => dirname(file)))
  const watcher = watch([...folders], {
    depth: 0,
    ignoreInitial: true,
    ignored: (path, stats) => stats?.isFile() === true && !KINDS.test(path) && !followed.has(path),
  })
  let quiet: NodeJS.Timeout | null = null
  let most: NodeJS.Timeout | null = null
  const stop = (): void => {
    for (const timer of [quiet, most]) if (timer !== null) clearTimeout(timer)
    quiet = null
    most = null
  }
  const tell = (): void => {
    stop()
    onChange()
  }
  watcher.on('all', (_, path) => {
    if (!followed.has(resolve(path)) && !(every && KINDS.test(path))) return
    if (quiet !== null) clearTimeout(quiet)
    quiet = setTimeout(tell, QUIET_MS)
    most ??= setTimeout(tell, MOST_MS)
  })
  // a folder that may not be read tells nothing; the page goes on
  watcher.on('error', () => {})
  await new Promise<void>((done) => watcher.once('ready', () => done()))
  return {
    follow: (now, all = false) => {
      followed = new Set(now.map((file) => resolve(file)))
      every = all
      const more = [...followed].map((file) => dirname(file)).filter((folder) => !folders.has(folder))
      for (const folder of more) folders.add(folder)
      if (more.length > 0) watcher.add([...new Set(more)])
    },
    close: async () => {
      stop()
      await watcher.close()
    },
  }
}
