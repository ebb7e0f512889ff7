/** The commands of measured data on the tables of the pilot line, which have the faults that real ones have. */
import { DATA_COMMANDS } from './commands.ts'
import { judgeLines } from './judge.ts'
import { PILOT } from './lines.ts'

judgeLines([PILOT], DATA_COMMANDS)
