import { criteriaOf, criteriaStory } from '@loopwright/notebook/decision'
import { decisionCommand } from '../../decisionCommand.ts'
import { criteriaDocument } from '../../documents/decision/criteriaDocument.ts'
import type { Shell } from '../../shell/shell.ts'
import type { StudyFlags } from '../../studyCommand.ts'

/** Which alternative the criteria of a decision file favour. */
export async function criteria(shell: Shell, file: string, flags: StudyFlags, command: string): Promise<number> {
  return await decisionCommand(shell, file, flags, command, {
    what: 'which alternative the criteria favour',
    document: (runs) => criteriaDocument(runs, criteriaOf(runs)),
    tale: criteriaStory,
  })
}
