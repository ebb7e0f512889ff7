/** The page that a command has written, opened in the browser. */
import { isPage } from '../options/arguments.ts'
import { DONE, Misuse, type Shell } from './shell.ts'

export interface PageFlags {
  /** file for the page */
  readonly out?: string
  /** open it when it is written */
  readonly open?: true
}

/**
 * Carries out a command, and opens the page where that was asked for and the command has done all.
 *
 * @throws Misuse  before anything is run, where there will be no page
 */
export async function withPage(shell: Shell, { out, open }: PageFlags, run: () => Promise<number>): Promise<number> {
  if (open !== true) return await run()
  if (out === undefined) throw new Misuse('--open opens the page; say where it goes, such as --out out/page.html')
  if (!isPage(out)) throw new Misuse(`--open opens a page, and "${out}" is none; write --out with a name that ends in .html`)
  const code = await run()
  if (code === DONE) await openPage(shell, out)
  return code
}

/** Where nothing can open a page, that is said, and is no failure: the page is there. */
export async function openPage(shell: Shell, out: string): Promise<void> {
  if (!(await shell.openPage(out))) shell.err.write(`nothing here opens pages by itself; open ${out} in a browser\n`)
}
