import { needsMoney, paybackOf, paybackStory } from '@loopwright/notebook/decision'
import { decisionCommand } from '../../decisionCommand.ts'
import { paybackDocument } from '../../documents/decision/paybackDocument.ts'
import type { Shell } from '../../shell/shell.ts'
import type { StudyFlags } from '../../studyCommand.ts'

/** What the alternatives of a decision file are worth against today. */
export async function payback(shell: Shell, file: string, flags: StudyFlags, command: string): Promise<number> {
  return await decisionCommand(shell, file, flags, command, {
    what: 'what each alternative is worth',
    needs: (of) => void needsMoney(of),
    document: (runs) => paybackDocument(runs, paybackOf(runs)),
    tale: paybackStory,
  })
}
