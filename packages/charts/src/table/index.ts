// Tables
export { tableOf, wordColumn, dataColumn } from './table.ts'
export type { Table, TableParts, TableColumn, TableRow, TableField, TableValue, ColumnOf, FieldOf } from './table.ts'
export { meanFields, fieldName } from './tableFields.ts'

// Numbers
export {
  formatNumber,
  formatShare,
  percent,
  formatWithHalfWidth,
  roundedParts,
  differenceDecimals,
  differenceParts,
  withHalf,
  formatDuration,
  formatSeconds,
  formatPerHour,
  formatStretch,
  timeScale,
  capital,
} from './format.ts'
export type { RoundedParts, TimeScale } from './format.ts'

// Text for a terminal
export { visibleLine, visibleText } from '../draw/visibleText.ts'
export { styledText, visibleStyled } from '../draw/textStyle.ts'
export type { TextStyle } from '../draw/textStyle.ts'
export { shellWord } from './shellWord.ts'

// How far a study has come
export { progressWords } from './progressWords.ts'
export type { RunsDone } from './progressWords.ts'
