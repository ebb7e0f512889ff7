/** A scenario of a skeleton and a folder of data, in memory. */
import type { Assembly } from '@loopwright/measure'
import { type DataFlags, dataFolder, type Folder } from './dataFolder.ts'
import { loadScenario, type Loaded, loadedText } from './loadScenario.ts'
import { Misuse, type Shell } from './shell/shell.ts'

export interface Assembled {
  readonly folder: Folder
  readonly assembly: Assembly
  /** as if its text stood in the file of the skeleton */
  readonly source: Loaded
  readonly skeleton: Loaded
}

/** @throws Misuse  with everything that does not fit */
export async function assembled(
  shell: Shell,
  file: string,
  folderName: string,
  flags: DataFlags & { readonly variation?: string },
  seed: string,
): Promise<Assembled> {
  const skeleton = await loadScenario(shell, file, flags.variation)
  const folder = await dataFolder(shell, folderName, flags, seed)
  const breaks = skeleton.scenario.line.breaks.length > 0
  if (folder.allowance?.breaks === 'allowance' && breaks)
    throw new Misuse(
      `breaks would be counted twice: the allowance has them (--breaks allowance), and so has "${file}"; take them out of one of the two`,
    )
  const { assemble } = await import('@loopwright/measure')
  const assembly = assemble(skeleton.text, folder.data, { files: (name) => shell.readBeside(file, name) })
  if (assembly.text === null) throw new Misuse(assembly.faults.map((fault) => `"${folderName}" and "${file}": ${fault}`).join('\n'))
  const notes =
    folder.allowance?.breaks === 'calendar' && !breaks
      ? ['The allowance has no breaks in it, and the calendar has none either: nobody rests.']
      : []
  return {
    folder,
    assembly: { ...assembly, notes: [...assembly.notes, ...notes] },
    source: await loadedText(shell, file, assembly.text),
    skeleton,
  }
}
