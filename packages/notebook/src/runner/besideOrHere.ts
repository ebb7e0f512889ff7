/** Files that a notebook names: from its folder; where there is none, from the working folder. */
import { dirname, isAbsolute, join } from 'node:path'
import type { Effects } from './effects.ts'

/** @throws what reading the file beside the notebook throws, where it is in neither folder */
export async function besideOrHere(
  notebookFile: string,
  path: string,
  { readFile }: Pick<Effects, 'readFile'>,
): Promise<{ readonly file: string; readonly text: string }> {
  const beside = isAbsolute(path) ? path : join(dirname(notebookFile), path)
  const read = async (file: string) => ({ file, text: await readFile(file) })
  return await read(beside).catch(async (error: unknown) => {
    if (beside === path) throw error
    return await read(path).catch(() => Promise.reject(error))
  })
}
