/**
 * Every sentence this package can say about a scenario file, one function each, one code each. Those about a line that may stand in code as well come
 * from `packages/line/src/check/sentences.ts`.
 * `message` says what was found, `fix` what would be right. It is over 300 lines because all sentences stand together, to be read and edited as one text.
 */

import { type Sentence, sentences, sentenceWords } from '@loopwright/line/check'

export type { Sentence } from '@loopwright/line/check'

const error = (code: string, message: string, fix: string): Sentence => ({ code, severity: 'error', message, fix })
const warning = (code: string, message: string, fix: string): Sentence => ({ code, severity: 'warning', message, fix })

export const { choices } = sentenceWords
const { all, shorten, quote, meant, plural } = sentenceWords

// What is wrong with a line, wherever it was written

export const {
  missing,
  unknownKey,
  wrongType,
  notAChoice,
  notWhole,
  tooSmall,
  notFinite,
  onlyOneOf,
  neither,
  badName,
  duplicateName,
  unknownZone,
  unknownStation,
  unknownSection,
  unknownVariant,
  unknownTask,
  negative,
  zero,
  shareBeyond,
  distributionRefused,
  listEmpty,
  noZones,
  pathTwice,
  pathsMissing,
  unknownPlace,
  badChain,
  pathToItself,
  manualNeedsMove,
  sectionTwice,
  walkBetween,
  walkTwice,
  inspectionPlace,
  reworkPlace,
  supplyForm,
  supplyAtOnce,
  timesOrder,
  clearMoveWithoutMove,
  trainAtTransfer,
  positionWithoutTransfer,
  startLength,
  startTwice,
  sharesZero,
  noVariants,
  mixNeeds,
  mixAndShares,
  weightsWhole,
  zoneTaken,
  taskTwice,
  timeMissing,
  timeForNobody,
  noDuty,
  tooManyZones,
  putInLoop,
  workEmpty,
  breaksNeedAutomatic,
  noLoad,
  unknownPart,
  partAmbiguous,
  noTransferThere,
  nobodyThere,
  certainStop,
  breaksOverlap,
  windowEmpty,
} = sentences

// The text as a whole

export const tooLarge = (characters: number, most: number): Sentence =>
  error('E_TOO_LARGE', `the file has ${characters} characters`, `a scenario has at most ${most}; put long lists of times into a CSV file`)

export const tooManyParts = (most: number): Sentence =>
  error(
    'E_TOO_MANY_PARTS',
    'the file has more parts than can be read in reasonable time',
    `keep it below about ${most} values; put long lists of times into a CSV file`,
  )

export const tooManyFindings = (most: number): Sentence =>
  error('E_TOO_MANY_FINDINGS', `there are more than ${most} problems; the rest is not shown`, 'mend the first ones and check again')

export const tooDeep = (most: number): Sentence =>
  error('E_TOO_DEEP', `the file is nested more than ${most} levels deep`, 'a scenario needs fewer than ten levels')

export const badYaml = (reason: string, fix: string): Sentence => error('E_YAML', `the text is not YAML here: ${reason}`, fix)

export const severalDocuments = (): Sentence =>
  error('E_SEVERAL_DOCUMENTS', 'a second document starts here', 'keep one scenario per file; remove the line "---"')

export const duplicateKey = (key: string, firstLine: number): Sentence =>
  error('E_DUPLICATE_KEY', `the key ${quote(key)} stands here a second time`, `it was given on line ${firstLine}; keep one of the two`)

export const keyNotText = (): Sentence => error('E_KEY', 'a key must be a word', 'write a name followed by a colon')

export const reservedKey = (key: string): Sentence =>
  error('E_KEY_RESERVED', `the key ${quote(key)} cannot be used`, 'programs keep this word for themselves; choose another name')

export const foreignTag = (tag: string): Sentence =>
  error('E_TAG', `the tag ${quote(tag)} has no meaning in a scenario`, 'leave the tag out and write the plain value')

export const aliasCycle = (name: string): Sentence =>
  error('E_ALIAS_CYCLE', `the reference "*${name}" contains itself`, 'write the value out')

export const aliasUnknown = (name: string): Sentence =>
  error('E_ALIAS_UNKNOWN', `nothing is marked "&${name}" above this place`, 'mark the value first, or write it out')

export const aliasBomb = (most: number): Sentence =>
  error('E_ALIAS_SIZE', `the references unfold to more than ${most} values`, 'write the values out instead of nesting references')

export const notAMap = (found: string): Sentence =>
  error('E_NOT_A_SCENARIO', `a scenario is a list of keys with values; found ${found}`, 'start with the line "format: 1"')

// Shape

export const formatUnknown = (found: string): Sentence =>
  error('E_FORMAT', `format ${quote(found)} is not known`, 'this version reads "format: 1"')

export const isDecision = (): Sentence =>
  error(
    'E_DECISION',
    'this is a decision file: it names alternatives, and does not say what a line is',
    'give the scenario that it names under "scenario:"',
  )

export const formatNotFirst = (): Sentence =>
  warning('W_FORMAT_FIRST', '"format" is not the first key', 'move the line "format: 1" to the top, so that any reader sees it first')

export const blankAfterColon = (key: string): Sentence =>
  error('E_COLON_BLANK', `no blank stands behind the colon of ${quote(key)}`, `write "${key}: …"`)

export const bareNumber = (found: string, proposals: readonly string[]): Sentence =>
  error('E_BARE_NUMBER', `the number ${shorten(found)} has no unit`, `write ${choices(proposals)}`)

export const tooBig = (found: string, most: number): Sentence => error('E_TOO_BIG', `${shorten(found)} is too big`, `the most is ${most}`)

// Names

export const badTitle = (title: string, reason: string): Sentence =>
  error('E_TITLE', `${quote(title)} cannot be a title: ${reason}`, 'write what people call it, in at most 200 characters on one line')

export const textTooLong = (count: number, most: number): Sentence =>
  error('E_TEXT_LONG', `the text has ${count} characters`, `write it in at most ${most}: tables and charts have no room for more`)

export const duplicateTitle = (what: string, title: string): Sentence =>
  error('E_DUPLICATE_TITLE', `two ${what} would both be shown as ${quote(title)}`, 'nobody could tell them apart; change one of the titles')

export const titleTwice = (name: string, earlier: string): Sentence =>
  error('E_TITLE_TWICE', `${quote(name)} has the title ${quote(earlier)} already`, 'give it once, or the same each time')

// Quantities

export const decimalComma = (found: string, right: string): Sentence =>
  error('E_DECIMAL_COMMA', `${quote(found)} has a decimal comma`, `write "${right}"`)

export const blankInNumber = (found: string, right: string): Sentence =>
  error('E_BLANK_IN_NUMBER', `${quote(found)} has a blank inside the number`, `write "${right}"`)

export const notAQuantity = (found: string, expected: string): Sentence =>
  error('E_NOT_A_QUANTITY', `${quote(found)} is not ${expected}`, 'write a number, a blank and a unit')

export const clockTime = (found: string, small: string, large: string): Sentence =>
  error(
    'E_CLOCK_TIME',
    large === '' ? `${quote(found)} is not a time with its unit` : `${quote(found)} can be read in two ways`,
    `write ${quote(small)}${large === '' ? '' : ` for minutes and seconds, or ${quote(large)} for hours and minutes`}`,
  )

export const unitMissing = (found: string, proposals: readonly string[]): Sentence =>
  error('E_UNIT_MISSING', `${quote(found)} has no unit`, `write ${choices(proposals)}`)

export const unitUnknown = (unit: string, near: string | null, known: readonly string[]): Sentence =>
  error(
    'E_UNIT_UNKNOWN',
    `"${shorten(unit)}" is not a known unit`,
    `${near === null ? 'the' : `did you mean "${near}"? The`} units are ${known.join(', ')}`,
  )

export const unitOfOther = (unit: string, measures: string, wanted: string, known: readonly string[]): Sentence =>
  error('E_UNIT_OTHER', `"${unit}" is for ${measures}; ${wanted} is needed here`, `the units are ${known.join(', ')}`)

export const beyondReach = (found: string, most: string): Sentence =>
  error('E_BEYOND_REACH', `${quote(found)} is too large to compute with`, `the most is ${most}`)

export const chanceBeyondReach = (found: string, station: string): Sentence =>
  error('E_CHANCE_REACH', `${quote(found)} at station ${quote(station)} is less than once in 136 years of work`, 'leave the stop out')

export const belowReach = (found: string, least: string): Sentence =>
  error('E_BELOW_REACH', `${quote(found)} is too small to compute with`, `the least is ${least}`)

export const badPlan = (found: string): Sentence =>
  error(
    'E_PLAN',
    `${quote(found)} is not understood`,
    'write it like "320 per shift", "410 in 8 h", "42 per net hour" or "40 per clock hour"',
  )

export const badRate = (found: string, forms: readonly string[]): Sentence =>
  error('E_RATE', `${quote(found)} is not understood`, `write it like ${choices(forms)}`)

export const whichHour = (found: string): Sentence =>
  error('E_WHICH_HOUR', `${quote(found)}: an hour with breaks, or without?`, 'write "per net hour" (breaks taken out) or "per clock hour"')

// Durations as distributions

export const badPhrase = (found: string): Sentence =>
  error(
    'E_PHRASE',
    `${quote(found)} is not understood as a time`,
    'write it like "45 s", "45 s ± 15 %", "30..60 s", "25..40..80 s", "exponential 4 min" or "lognormal 4 min ± 66 %"',
  )

export const phraseKind = (word: string, near: string | null, known: readonly string[]): Sentence =>
  error(
    'E_PHRASE_KIND',
    `"${shorten(word)}" is not a distribution that can be written as a phrase`,
    meant(near, `phrases know ${known.join(', ')}; the rest is written as { kind: … }`),
  )

export const spreadNotPercent = (found: string, right: string): Sentence =>
  error(
    'E_SPREAD',
    `the spread "${shorten(found)}" is not a percentage`,
    `write the standard deviation as a share of the mean, such as "${right}"`,
  )

export const spreadMissing = (kind: string): Sentence =>
  error('E_SPREAD_MISSING', `"${kind}" needs a spread`, `write it like "${kind} 4 min ± 66 %"`)

export const spreadTooMuch = (kind: string): Sentence =>
  error('E_SPREAD_TOO_MUCH', `"${kind}" takes no spread`, 'leave out "±" and what follows')

export const rangeParts = (kind: string, right: string): Sentence =>
  error('E_RANGE_PARTS', `"${kind}" takes another number of values`, `write it like "${right}"`)

export const leftover = (rest: string): Sentence => error('E_LEFTOVER', `"${shorten(rest)}" has no meaning here`, 'remove it')

export const plainNormal = (right: string): Sentence =>
  error('E_NORMAL', 'a plain normal distribution goes below zero, a time cannot', `write ${right}: same mean and spread, never negative`)

export const wordNotHere = (word: string): Sentence =>
  error('E_WORD_NOT_HERE', `"${shorten(word)}" cannot stand here`, 'write a time, such as "45 s"')

export const wrongOrder = (reason: string): Sentence => error('E_ORDER', reason, 'write the values from small to large')

export const cvBare = (found: string): Sentence =>
  error(
    'E_CV_BARE',
    `${shorten(found)} without a percent sign would be ${shorten(found)}00 % of the mean`,
    `write "${shorten(found)} %" if that was meant`,
  )

export const eitherParameters = (kind: string, forms: readonly string[]): Sentence =>
  error('E_PARAMETERS', `"${kind}" has too few or too many parameters`, `give ${forms.join(', or ')}, nothing else`)

export const limitsCutAll = (): Sentence =>
  error('E_LIMITS_CUT', 'the limits cut away nearly all of the distribution', 'widen them, or use another distribution')

export const listLengths = (values: number, weights: number): Sentence =>
  error('E_LIST_LENGTHS', `there are ${plural(values, 'value')} and ${plural(weights, 'weight')}`, 'give one weight for each value')

export const unitForValues = (): Sentence => error('E_VALUES_UNIT', 'the values have no unit', 'add "unit: s" beside them')

export const valuesOrFile = (): Sentence =>
  error(
    'E_VALUES_OR_FILE',
    'either "values" or "file" with "column" is needed, not both',
    'remove one of them, or add the one that is missing',
  )

export const noFilesHere = (file: string): Sentence =>
  error('E_NO_FILES', `${quote(file)} cannot be opened here`, 'write the values into the scenario: values: [ … ], unit: s')

export const fileMissing = (file: string): Sentence =>
  error('E_FILE', `there is no file ${quote(file)}`, 'file names are relative to the scenario file')

export const columnUnknown = (column: string, near: string | null, known: readonly string[]): Sentence =>
  error('E_COLUMN', `the file has no column ${quote(column)}`, meant(near, `columns are ${all(known)}`))

export const badCell = (cell: string, row: number): Sentence =>
  error('E_CELL', `line ${row} of the file has ${quote(cell)} in that column`, 'every cell must be a number, 0 or more')

export const whereNothing = (column: string, value: string, near: string | null, known: readonly string[]): Sentence =>
  error('E_WHERE', `no row has ${quote(value)} in the column ${quote(column)}`, meant(near, `there are ${all(known)}`))

export const cellsEmpty = (column: string, empty: number, rows: number): Sentence =>
  warning(
    'W_CELLS_EMPTY',
    `${empty} of ${plural(rows, 'row')} ${empty === 1 ? 'has' : 'have'} no time in the column ${quote(column)}`,
    'they are left out; fill them in if times are missing',
  )

export const rowsPooled = (column: string, rows: number, key: string, values: readonly string[]): Sentence =>
  warning(
    'W_ROWS_POOLED',
    `all ${plural(rows, 'time')} of the column ${quote(column)} are taken together, although ${quote(key)} differs: ${all(values.slice(0, 4))}${values.length > 4 ? ' and others' : ''}`,
    `take the rows of one of them: where: { ${key}: ${values[0]} }`,
  )

// Zones and paths

export const badLoop = (found: string): Sentence =>
  error('E_LOOP', `${quote(found)} is not understood`, 'write it like "22 zones of 1.5 m", or a list such as [6 × 1.5 m, 4 × 1.2 m]')

export const putInPath = (from: string, to: string): Sentence =>
  error(
    'E_PUT_IN_PATH',
    `this path leads from ${quote(from)} to ${quote(to)}, but zones are put in between`,
    'leave "to" out: the values then hold for the way out, wherever it leads',
  )

export const zoneOrStation = (name: string): Sentence =>
  error('E_ZONE_OR_STATION', `${quote(name)} is a station and a zone`, 'name another zone beside this place')

export const zoneTakenOut = (zone: string): Sentence =>
  error('E_ZONE_TAKEN_OUT', `zone ${quote(zone)} is taken out`, 'put what stands here elsewhere, or leave the zone in')

export const zoneBesideLoop = (zone: string): Sentence =>
  error(
    'E_ZONE_BESIDE',
    `zone ${quote(zone)} is not in the loop, and no path leads to it`,
    'check its name, or add ways under "paths", such as "Z05 > R1 > Z06"',
  )

export const transferTwice = (zone: string): Sentence =>
  error('E_TRANSFER_TWICE', `zone ${quote(zone)} is given a transfer twice`, 'name it once, under "corners" or under "zones"')

// What is probably not meant

export const listEnds = (products: number, needs: string, end: string): Sentence =>
  warning(
    'W_LIST_ENDS',
    `the list has ${plural(products, 'product')}, which the line makes in about ${needs}; the window ends after ${end}`,
    'after the list nothing is made: write a longer list, a pattern (repeated for ever), or a shorter window',
  )

export const stopLong = (lasts: string, between: string): Sentence =>
  warning(
    'W_STOP_LONG',
    `this stop lasts ${lasts} on average, longer than the ${between} between two of them`,
    'the part would be stopped most of the time; check the units of "lasts" and "after"',
  )

export const tooOften = (every: string): Sentence =>
  warning(
    'W_TOO_OFTEN',
    `this comes every ${every} on average, more than a million times in one run`,
    'each of them is simulated, so that a run may take hours; check the units',
  )

export const cornersOpen = (found: string): Sentence =>
  warning(
    'W_CORNERS_OPEN',
    `the loop does not close: ${found}`,
    'a closed loop turns four times more to one side than to the other, and its opposite sides are of one length; check "turn" and the zones between the corners',
  )

export const reworkWithoutTime = (task: string, variants: readonly string[]): Sentence =>
  warning(
    'W_REWORK_WITHOUT_TIME',
    `${all(variants)} may be rejected, but the rework ${quote(task)} has no time for ${variants.length === 1 ? 'it' : 'them'}`,
    'such a product goes round for ever: give the task a time for it, or take it off with "accepts: all" or "accepts: rejected"',
  )

export const unusual = (what: string, found: string, usual: string): Sentence =>
  warning(
    'W_UNUSUAL',
    `${what} of ${found} is far from what is usual, ${usual} (common practice, no source)`,
    'check the unit; if it is meant, leave it as it is',
  )

// Products

export const sharesSum = (sum: string): Sentence => error('E_SHARES_SUM', `the shares sum to ${sum} %`, 'they must sum to 100 %')

export const sharesMixed = (): Sentence =>
  error('E_SHARES_MIXED', 'percentages and whole weights are mixed', 'write all shares as percentages, or all as whole weights')

export const shareNumber = (found: string): Sentence =>
  error('E_SHARE_NUMBER', `${shorten(found)} is neither a percentage nor a whole weight`, 'write it like "40 %", or use whole numbers')

export const tooManyVariants = (count: number, most: number): Sentence =>
  error('E_TOO_MANY_VARIANTS', `the options expand to ${count} variants`, `the most is ${most}; leave out options that change no time`)

export const shareMissing = (variants: readonly string[]): Sentence =>
  error('E_SHARE_MISSING', `no share is given for ${all(variants)}`, 'give each variant one; 0 means never')

// Stations and tasks

export const cvMissing = (): Sentence =>
  error(
    'E_CV_MISSING',
    'the spread of this task is not given',
    'add "cv: 12 %", or set defaults.task.cv; a constant time is written "45 s" or { mean: …, cv: 0 % }',
  )

// Stops

export const afterOrChance = (): Sentence =>
  error(
    'E_AFTER_OR_CHANCE',
    'a stop needs either "after" or "chance"',
    'write "after: exponential 90 min", or "chance: 1.5 per 100 cycles"',
  )

export const chanceAtStation = (): Sentence =>
  error('E_CHANCE_STATION', '"chance" counts the cycles of a station', 'name stations here, or give "after" a time')

export const chanceClock = (): Sentence => error('E_CHANCE_CLOCK', '"chance" counts on the operating clock', 'leave "clock" out')

export const chanceWithoutTime = (station: string): Sentence =>
  error(
    'E_CHANCE_TIME',
    `the station ${quote(station)} has no working time to count cycles on`,
    'name other stations, or give "after" a time',
  )

// Calendar

export const badClock = (found: string): Sentence =>
  error('E_CLOCK', `${quote(found)} is not a time of day`, 'write it like "06:00", with quotes')

export const shiftEmpty = (): Sentence => error('E_SHIFT_EMPTY', 'the shift starts and ends at the same time', 'give it a length')

export const shiftsTooLong = (hours: string): Sentence =>
  error('E_SHIFTS_DAY', `the shifts of one day last ${hours} h`, 'a day has 24 h; fewer or shorter shifts')

export const shiftsOverlap = (name: string): Sentence =>
  error(
    'E_SHIFTS_OVERLAP',
    `the shift ${quote(name)} begins before the one before it has ended`,
    'list the shifts in the order of the day, none inside another',
  )

export const tooManyShifts = (most: number): Sentence =>
  error('E_TOO_MANY_SHIFTS', 'so many shifts cannot be run in one go', `the most is ${most} from the start`)

export const breakOutside = (end: string, shift: string): Sentence =>
  error('E_BREAK_OUTSIDE', `the break ends ${end} after the start of a shift of ${shift}`, 'a break lies inside its shift')

export const breakAtOrAfter = (): Sentence =>
  error('E_BREAK_WHEN', 'a break needs either "after" or "at"', 'write "after: 120 min" from the start of the shift, or "at: \'08:00\'"')

export const noNetTime = (): Sentence => error('E_NO_NET_TIME', 'the breaks fill the whole shift', 'leave some working time')

export const unknownShift = (found: string, near: string | null, known: readonly string[]): Sentence =>
  error('E_UNKNOWN_SHIFT', `${quote(found)} is not a shift of this calendar`, meant(near, `write ${choices(known)}`))

export const noWarmup = (): Sentence =>
  warning(
    'W_NO_WARMUP',
    'counting starts at time 0, while all carriers are still empty',
    'judge a later shift, or give a warm-up; the first shift fills the line',
  )

export const breakBeyondEnd = (): Sentence =>
  warning('W_BREAK_LATE', 'this break begins after the end of the run', 'it changes nothing; check its time')

export const planNeedsShift = (): Sentence =>
  error('E_PLAN_SHIFT', 'a plan per shift needs a calendar', 'add "calendar", or give the plan per net hour or per clock hour')

// Variations

export const badPath = (path: string): Sentence =>
  error(
    'E_PATH',
    `${quote(path)} is not a path into this file`,
    'write it like drive.speed or stations.S5.zone, with "…" around names that hold a dot',
  )

export const pathNowhere = (path: string, step: string, near: string | null): Sentence =>
  error(
    'E_PATH_NOWHERE',
    `${quote(path)} leads nowhere: there is no ${quote(step)}`,
    meant(near, 'a path goes by keys that stand in the file, such as drive.speed or stations.S5.zone'),
  )

export const variationBroken = (name: string, reason: string): Sentence =>
  error('E_VARIATION', `the variation ${quote(name)} makes an error: ${reason}`, 'change its values, or the file')

export const variationName = (name: string): Sentence =>
  error(
    'E_VARIATION_NAME',
    `the name ${quote(name)} has a comma`,
    'the command line takes several variations with commas between them; leave the comma out of the name',
  )

export const unknownVariation = (name: string, near: string | null, known: readonly string[]): Sentence =>
  error(
    'E_UNKNOWN_VARIATION',
    `there is no variation called ${quote(name)}`,
    meant(near, known.length === 0 ? 'the file has none' : `variations are ${all(known)}`),
  )
