import { join } from 'node:path'
import { shellWord, visibleLine } from '@loopwright/charts/table'
import { DONE, Misuse, type Shell } from '../shell/shell.ts'
import { starterFiles } from '../starter/starterFiles.ts'

/** Makes a folder with a line and a study of it that work at once. What is there already stays as it is. */
export async function makeNew(shell: Shell, folder: string): Promise<number> {
  const { scenarioJsonSchema } = await import('@loopwright/scenario')
  const files = starterFiles(scenarioJsonSchema(), shell.typesFor(folder)).map(({ name, text }) => ({
    name,
    path: join(folder, name),
    text,
  }))
  const there: string[] = []
  for (const { name, path } of files) if (await isThere(shell, path)) there.push(name)
  if (there.length > 0)
    throw new Misuse(
      `"${visibleLine(folder)}" has ${there.join(', ')} already; nothing was written. Name another folder, such as ${visibleLine(join(folder, 'new-line'))}`,
    )
  for (const { path } of files) await shell.checkWritable(path)
  for (const { path, text } of files) await shell.writeFile(path, text)
  const go = folder === '.' ? '' : `cd ${visibleLine(shellWord(folder))}\n`
  shell.out.write(
    `Made: ${files.map(({ path }) => visibleLine(path)).join(', ')}\n\n${go}loopwright check line.yaml\nloopwright notebook study.ts --watch --open\n\nWhere no loopwright is found: npx loopwright, in the folder in which npm put it, or below.\n`,
  )
  return DONE
}

const isThere = async (shell: Shell, path: string): Promise<boolean> =>
  await shell.readFile(path).then(
    () => true,
    (error: unknown) => !(error instanceof Misuse && error.message.startsWith('there is no file')),
  )
