import { needsWalks, screeningsOf, screeningStory } from '@loopwright/notebook/decision'
import { decisionCommand } from '../../decisionCommand.ts'
import { screeningDocument } from '../../documents/decision/screeningDocument.ts'
import type { Shell } from '../../shell/shell.ts'
import type { StudyFlags } from '../../studyCommand.ts'

/** What needs a closer look before it is built: figures of the alternatives against published guidance. */
export async function screen(shell: Shell, file: string, flags: StudyFlags, command: string): Promise<number> {
  return await decisionCommand(shell, file, flags, command, {
    what: 'what needs a closer look',
    needs: needsWalks,
    document: (runs) => screeningDocument(runs, screeningsOf(runs)),
    tale: screeningStory,
  })
}
