/**
 * Every sentence this package can say about a scenario file, one function each, one code each.
 * `message` says what was found, `fix` what would be right. It is over 300 lines because all sentences stand together, to be read and edited as one text.
 */

export interface Sentence {
  readonly code: string
  readonly severity: 'error' | 'warning'
  readonly message: string
  readonly fix: string
}

const error = (code: string, message: string, fix: string): Sentence => ({ code, severity: 'error', message, fix })
const warning = (code: string, message: string, fix: string): Sentence => ({ code, severity: 'warning', message, fix })

/** `"a", "b" or "c"`, shortened where there are many. */
export function choices(words: readonly string[], most = 12): string {
  const shown = words.slice(0, most).map((word) => `"${word}"`)
  if (words.length > most) return `${shown.join(', ')} … (${words.length} in all)`
  return shown.length < 2 ? shown.join('') : `${shown.slice(0, -1).join(', ')} or ${shown.at(-1)}`
}

/** `"a", "b" and "c"`, shortened where there are many. */
const all = (words: readonly string[]): string => choices(words).replace(/" or (?="[^"]*"$)/, '" and ')

const shorten = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)}…` : text)
const quote = (text: string): string => `"${shorten(text)}"`
const meant = (near: string | null, otherwise: string): string => (near === null ? otherwise : `did you mean "${near}"?`)
const plural = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`

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

export const badYaml = (reason: string, isTab: boolean): Sentence =>
  error(
    'E_YAML',
    `the text is not YAML here: ${reason}`,
    isTab ? 'use blanks instead of the tab' : 'check indentation, brackets and quotes around this place',
  )

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

export const formatNotFirst = (): Sentence =>
  warning('W_FORMAT_FIRST', '"format" is not the first key', 'move the line "format: 1" to the top, so that any reader sees it first')

export const unknownKey = (key: string, near: string | null, known: readonly string[]): Sentence =>
  error('E_UNKNOWN_KEY', `there is no key ${quote(key)} here`, meant(near, `the keys here are ${known.join(', ')}`))

export const missing = (key: string, expected: string): Sentence =>
  error('E_MISSING', `"${key}" is missing`, `add "${key}:" with ${expected}`)

export const wrongType = (expected: string, found: string): Sentence => error('E_TYPE', `found ${found}`, `write ${expected}`)

export const notAChoice = (found: string, near: string | null, known: readonly string[]): Sentence =>
  error(
    'E_CHOICE',
    `${quote(found)} cannot stand here`,
    `${near === null ? 'it is' : `did you mean "${near}"? It is`} ${choices(known, 20)}`,
  )

export const bareNumber = (found: string, proposals: readonly string[]): Sentence =>
  error('E_BARE_NUMBER', `the number ${shorten(found)} has no unit`, `write ${choices(proposals)}`)

export const notWhole = (found: string): Sentence =>
  error('E_NOT_WHOLE', `${shorten(found)} is not a whole number`, 'write a whole number without a unit')

export const tooSmall = (found: string, least: number): Sentence =>
  error('E_TOO_SMALL', `${shorten(found)} is too small`, `the least is ${least}`)

export const tooBig = (found: string, most: number): Sentence => error('E_TOO_BIG', `${shorten(found)} is too big`, `the most is ${most}`)

export const notFinite = (found: string): Sentence =>
  error('E_NOT_FINITE', `${shorten(found)} is not a usable number`, 'write an ordinary number')

export const onlyOneOf = (here: string, other: string, why: string): Sentence =>
  error('E_ONLY_ONE_OF', `"${here}" and "${other}" do not go together`, `${why}; remove one of them`)

export const neither = (keys: readonly string[], why: string): Sentence => error('E_NEITHER', `${choices(keys)} is needed`, why)

// Names

export const badName = (name: string, reason: string): Sentence =>
  error('E_NAME', `${quote(name)} cannot be a name: ${reason}`, 'use letters, digits, blanks and signs other than "/", at most 200')

export const badTitle = (title: string, reason: string): Sentence =>
  error('E_TITLE', `${quote(title)} cannot be a title: ${reason}`, 'write what people call it, in at most 200 characters on one line')

export const duplicateTitle = (what: string, title: string): Sentence =>
  error('E_DUPLICATE_TITLE', `two ${what} would both be shown as ${quote(title)}`, 'nobody could tell them apart; change one of the titles')

export const titleTwice = (name: string, earlier: string): Sentence =>
  error('E_TITLE_TWICE', `${quote(name)} has the title ${quote(earlier)} already`, 'give it once, or the same each time')

export const duplicateName = (what: string, name: string): Sentence =>
  error(
    'E_DUPLICATE_NAME',
    `there are two ${what} called ${quote(name)}`,
    'names feed the random streams and must differ; rename one of them',
  )

export const unknownZone = (name: string, near: string | null, known: readonly string[]): Sentence =>
  error(
    'E_UNKNOWN_ZONE',
    `there is no zone called ${quote(name)}`,
    meant(beyond(name, known) ? null : near, known.length === 0 ? 'no zones are known' : `zones are ${range(known)}`),
  )

/** True for a number that no zone has, such as Z17 where the last is Z16: a name that is near it was not meant. */
function beyond(name: string, known: readonly string[]): boolean {
  const numbered = /^(.*?)(\d+)$/
  const [, letters, digits] = numbered.exec(name) ?? []
  const numbers = known.flatMap((each) => {
    const match = numbered.exec(each)
    return match !== null && match[1] === letters ? [Number(match[2])] : []
  })
  return numbers.length > 0 && !(Number(digits) >= Math.min(...numbers) && Number(digits) <= Math.max(...numbers))
}

export const unknownStation = (name: string, near: string | null, known: readonly string[]): Sentence =>
  error('E_UNKNOWN_STATION', `there is no station called ${quote(name)}`, meant(near, `stations are ${all(known)}`))

export const unknownSection = (name: string, known: readonly string[]): Sentence =>
  error(
    'E_UNKNOWN_SECTION',
    `there is no section called ${quote(name)}`,
    known.length === 0 ? 'the line has no sections' : `sections are ${all(known)}`,
  )

export const unknownVariant = (name: string, near: string | null, known: readonly string[]): Sentence =>
  error('E_UNKNOWN_VARIANT', `there is no variant called ${quote(name)}`, meant(near, `variants are ${all(known)}`))

export const unknownTask = (name: string, near: string | null, known: readonly string[]): Sentence =>
  error(
    'E_UNKNOWN_TASK',
    `there is no task called ${quote(name)}`,
    meant(near, known.length === 0 ? 'no station has a task' : `tasks are ${all(known)}`),
  )

/** `zone "Z01"`, `zones "Z01" and "Z02"`, `zones "Z01", "Z02", "Z03" and 7 more`. */
function zoneList(names: readonly string[]): string {
  if (names.length <= ZONES_SHOWN + 1) return `zone${names.length === 1 ? '' : 's'} ${all(names)}`
  const shown = names.slice(0, ZONES_SHOWN).map(quote)
  return `zones ${shown.join(', ')} and ${names.length - ZONES_SHOWN} more`
}

const ZONES_SHOWN = 3

const range = (names: readonly string[]): string => (names.length > 6 ? `"${names[0]}" … "${names.at(-1)}"` : all(names))

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

export const negative = (found: string): Sentence => error('E_NEGATIVE', `${quote(found)} is negative`, 'write 0 or more')

export const zero = (found: string): Sentence => error('E_ZERO', `${quote(found)} is zero`, 'write more than 0')

export const beyondReach = (found: string, most: string): Sentence =>
  error('E_BEYOND_REACH', `${quote(found)} is too large to compute with`, `the most is ${most}`)

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

export const shareBeyond = (found: string): Sentence =>
  error('E_SHARE_BEYOND', `${quote(found)} is not between 0 and 100 %`, 'write a share such as "1.5 %" or 0.015')

export const eitherParameters = (kind: string, forms: readonly string[]): Sentence =>
  error('E_PARAMETERS', `"${kind}" has too few or too many parameters`, `give ${forms.join(', or ')}, nothing else`)

export const limitsCutAll = (): Sentence =>
  error('E_LIMITS_CUT', 'the limits cut away nearly all of the distribution', 'widen them, or use another distribution')

export const distributionRefused = (reason: string): Sentence =>
  error('E_DISTRIBUTION', reason, 'change the parameters of this distribution')

export const listEmpty = (): Sentence => error('E_LIST_EMPTY', 'the list is empty', 'give at least one value')

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

export const noZones = (): Sentence => error('E_NO_ZONES', 'the line has no zones', 'write it like "loop: 22 zones of 1.5 m"')

export const tooManyZones = (count: string, most: number): Sentence =>
  error('E_TOO_MANY_ZONES', `${count} zones are more than can be read`, `the most is ${most}`)

export const zoneWithoutLength = (zones: readonly string[]): Sentence =>
  error(
    'E_ZONE_LENGTH',
    `the length of ${zoneList(zones)} is not known, and the way in needs it`,
    'give the zone a length, or the path a distance, or both move and clear times',
  )

export const pathTwice = (from: string, to: string): Sentence =>
  error('E_PATH_TWICE', `the path from ${quote(from)} to ${quote(to)} stands here a second time`, 'keep one of the two')

export const pathsMissing = (): Sentence =>
  error('E_PATHS_MISSING', 'the zones have no paths', 'write "loop:" for one closed loop, or list the ways, such as "Z01 > Z02 > Z01"')

export const zoneWithoutWay = (zones: readonly string[], into: boolean): Sentence =>
  warning(
    'W_ZONE_WITHOUT_WAY',
    `no path leads ${into ? 'to' : 'out of'} ${zones.length === 1 ? 'zone' : 'the zones'} ${all(zones)}`,
    into ? 'no carrier will come there unless it starts there' : 'a carrier that comes there stays for ever',
  )

export const putInLoop = (): Sentence =>
  error('E_PUT_IN_LOOP', 'zones are put into or taken out of a "loop", and this file has none', 'change "zones" and "paths" instead')

export const putInPath = (from: string, to: string): Sentence =>
  error(
    'E_PUT_IN_PATH',
    `this path leads from ${quote(from)} to ${quote(to)}, but zones are put in between`,
    'leave "to" out: the values then hold for the way out, wherever it leads',
  )

export const unknownPlace = (name: string, near: string | null): Sentence =>
  error('E_UNKNOWN_PLACE', `there is no station or zone called ${quote(name)}`, meant(near, 'name a station, or a zone of the loop'))

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

export const storeWithoutWay = (): Sentence =>
  error(
    'E_STORE_WITHOUT_WAY',
    'the carriers start in the store, but no path leads out of it',
    'add a way such as "store > Z01", or let them start on the line',
  )

export const badChain = (found: string): Sentence =>
  error('E_PATH_CHAIN', `${quote(found)} is not a way`, 'write zones in a row with ">" between them, such as "Z01 > Z02 > Z03"')

export const pathToItself = (zone: string): Sentence =>
  error('E_PATH_TO_ITSELF', `the path out of ${quote(zone)} leads back to itself`, 'name another zone in "to"')

export const storeDistance = (zone: string): Sentence =>
  error(
    'E_STORE_DISTANCE',
    `how far is it from zone ${quote(zone)} to the store? The zones are not all of one length`,
    'give the path a "distance", or a "move" and a "clear"',
  )

export const manualNeedsMove = (kind: string): Sentence =>
  error('E_MANUAL_MOVE', `a ${kind} needs its time`, 'add "move: 6 s", or whatever the operator takes')

export const sectionTwice = (zone: string): Sentence =>
  error('E_SECTION_TWICE', `zone ${quote(zone)} is in two sections`, 'a zone belongs to one safety circuit at most')

export const safetyWithoutSection = (zone: string): Sentence =>
  error(
    'E_SAFETY_SECTION',
    `zone ${quote(zone)} is in no section that could stop`,
    'put the zone into a section, or remove the safety stop',
  )

export const walkBetween = (): Sentence => error('E_WALK', 'a walk is between two different stations', 'write "between: [S1, S4]"')

export const operatorsFew = (station: string, needed: number, there: number): Sentence =>
  warning(
    'W_OPERATORS_FEW',
    `station ${quote(station)} needs ${plural(needed, 'operator')}, and ${there} ${there === 1 ? 'covers' : 'cover'} it`,
    'its work never starts, and the line stands still; let more operators cover it, or need fewer',
  )

export const inspectionPlace = (task: string): Sentence =>
  error('E_INSPECTION', `the unload task ${quote(task)} cannot inspect`, 'inspect in a load or work task, before the product is taken off')

export const reworkPlace = (task: string): Sentence =>
  error('E_REWORK', `the task ${quote(task)} of an unload or load cannot be rework`, 'mark work tasks only')

export const supplyForm = (): Sentence =>
  error('E_SUPPLY', 'a supply needs either "every" or "times"', 'give one of the two, or write "supply: always"')

export const supplyAtOnce = (): Sentence =>
  error(
    'E_SUPPLY_AT_ONCE',
    'the time between two arrivals is 0 on average',
    'products without end would come at once; give a time above 0, or write "supply: always"',
  )

export const timesOrder = (): Sentence => error('E_TIMES_ORDER', 'the times do not rise', 'write them in the order of the clock')

export const speedNeeded = (zones: readonly string[]): Sentence =>
  error(
    'E_SPEED_NEEDED',
    `no speed is known for the way out of ${zoneList(zones)}`,
    'give "drive" a speed, such as "15 m/min", or the paths a move time',
  )

export const carrierSizeNeeded = (which: string, zones: readonly string[]): Sentence =>
  error(
    'E_CARRIER_SIZE',
    `the ${which} of a carrier is not known, and the clear time of ${zoneList(zones)} needs it`,
    `give "carriers" a ${which}, such as "1.2 m", or the paths a clear time`,
  )

export const clearMoveWithoutMove = (): Sentence =>
  error('E_CLEAR_MOVE', '"clear: move" means the given move time, and there is none', 'give "move" a time, or leave "clear" out')

export const sensorTooEarly = (zones: readonly string[]): Sentence =>
  error(
    'E_SENSOR',
    `the sensor of ${zoneList(zones)} lies a whole carrier or more before the stop point`,
    'it would see the tail pass before the carrier has started; make "sensorBeforeStop" smaller than the carrier',
  )

export const carrierTooLong = (which: string, zones: readonly string[], carrier: string, length: string): Sentence =>
  error(
    'E_CARRIER_LONG',
    which === 'width'
      ? `a carrier is ${carrier} wide, travels sideways here, and does not fit ${zoneList(zones)} of ${length}`
      : `a carrier is ${carrier} long and does not fit ${zoneList(zones)} of ${length}`,
    'a zone holds one whole carrier: lengthen the zone, or make the carrier smaller',
  )

export const trainAtTransfer = (zone: string): Sentence =>
  error(
    'E_TRAIN_TRANSFER',
    `zone ${quote(zone)} has a transfer and cannot be left by train release`,
    'leave "release" out there; a transfer is always left by single release',
  )

export const positionWithoutTransfer = (zone: string): Sentence =>
  error('E_POSITION', `zone ${quote(zone)} has no transfer that could stand high`, 'write "low", or give the zone a transfer')

export const movesTakeNoTime = (): Sentence =>
  error(
    'E_NO_MOVE_TIME',
    'no move takes any time',
    'a carrier would go round for ever within one instant; give at least one move a time above 0',
  )

export const allExitClear = (): Sentence =>
  error(
    'E_ALL_EXIT_CLEAR',
    'every zone is a transfer that is entered only if its exit is clear',
    'a line needs storage zones in which carriers can wait',
  )

export const transferTwice = (zone: string): Sentence =>
  error('E_TRANSFER_TWICE', `zone ${quote(zone)} is given a transfer twice`, 'name it once, under "corners" or under "zones"')

export const cornersOdd = (count: number): Sentence =>
  warning(
    'W_CORNERS_ODD',
    `${plural(count, 'transfer')} with a change of direction: after one lap the carrier would have turned sideways`,
    'a loop needs an even number of them',
  )

// Carriers

export const carriersFillLoop = (count: number, zones: number): Sentence =>
  error(
    'E_CARRIERS_FILL',
    `${plural(count, 'carrier')} in ${plural(zones, 'zone')} cannot move`,
    `at least one zone must be free: at most ${zones - 1}`,
  )

export const carriersDoNotFit = (count: number, places: number): Sentence =>
  error(
    'E_CARRIERS_PLACE',
    `${plural(count, 'carrier')} and only ${plural(places, 'storage zone')} to start in`,
    `transfers that are entered only if their exit is clear are no place to stand: at most ${places}`,
  )

export const carriersGridlock = (count: number): Sentence =>
  warning(
    'W_GRIDLOCK',
    `with ${plural(count, 'carrier')} every storage zone is full and nothing can move`,
    `the result is gridlock at once; use ${count - 1} or fewer`,
  )

export const startLength = (places: number, count: number): Sentence =>
  error(
    'E_START_COUNT',
    `${plural(places, 'start zone')} for ${plural(count, 'carrier')}`,
    'name one zone for each carrier, or use "spread"',
  )

export const startTwice = (zone: string): Sentence =>
  error('E_START_TWICE', `two carriers start in zone ${quote(zone)}`, 'a zone holds one carrier')

// What is probably not meant

/** @param between  the unload station behind which and the load station before which they stand; null where it is no loop */
export const stationUnreached = (stations: readonly string[], between: readonly [string, string] | null): Sentence =>
  warning(
    'W_STATION_UNREACHED',
    `no product comes to station${stations.length === 1 ? '' : 's'} ${all(stations)}${between === null ? '' : `: behind the unload station ${quote(between[0])} and before the load station ${quote(between[1])} the carriers are empty`}`,
    between === null
      ? 'no way leads there from a load station; check the paths and whom they take'
      : 'carriers run in the order of the zones; move the station between load and unload, or change these two',
  )

export const spurNeverEntered = (transfer: string, zone: string): Sentence =>
  warning(
    'W_SPUR_CLOSED',
    `no carrier ever enters ${quote(transfer)}: its only way out is zone ${quote(zone)}, where the carrier would come from`,
    'it is entered only if its exit is clear, and the carrier itself stands there; let carriers wait in it (enterOnlyIfExitClear: false), or lead it elsewhere',
  )

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

export const sharesZero = (): Sentence => error('E_SHARES_ZERO', 'all shares are zero', 'at least one variant must be made')

export const noVariants = (): Sentence => error('E_NO_VARIANTS', 'there are no variants', 'name at least one, or leave "variants" out')

export const tooManyVariants = (count: number, most: number): Sentence =>
  error('E_TOO_MANY_VARIANTS', `the options expand to ${count} variants`, `the most is ${most}; leave out options that change no time`)

export const mixNeeds = (kind: string, needs: string): Sentence =>
  error('E_MIX', `the mix "${kind}" needs ${needs}`, 'see the table of mixes in the scenario reference')

export const mixAndShares = (): Sentence =>
  error(
    'E_MIX_SHARES',
    'shares are given twice: beside the variants and in the mix',
    'list the variants by name only, or leave the weights out of the mix',
  )

export const weightsWhole = (): Sentence => error('E_WEIGHTS_WHOLE', 'a levelled mix counts in whole weights', 'write whole numbers')

export const shareMissing = (variants: readonly string[]): Sentence =>
  error('E_SHARE_MISSING', `no share is given for ${all(variants)}`, 'give each variant one; 0 means never')

// Stations and tasks

export const zoneTaken = (zone: string, other: string): Sentence =>
  error(
    'E_ZONE_TAKEN',
    `zone ${quote(zone)} already has the station ${quote(other)}`,
    'a zone holds at most one station; choose another zone',
  )

export const taskTwice = (task: string): Sentence =>
  error('E_TASK_TWICE', `the task ${quote(task)} stands twice in one station`, 'two tasks of one station need two names')

export const timeMissing = (variants: readonly string[]): Sentence =>
  error(
    'E_TIME_MISSING',
    `no time is given for ${all(variants)}`,
    'every variant needs one; write "none" for a variant that does not have this task',
  )

export const timeForNobody = (): Sentence =>
  error('E_TIME_FOR_NOBODY', 'no variant has this task', 'give at least one variant a time, or remove the task')

export const cvMissing = (): Sentence =>
  error(
    'E_CV_MISSING',
    'the spread of this task is not given',
    'add "cv: 12 %", or set defaults.task.cv; a constant time is written "45 s" or { mean: …, cv: 0 % }',
  )

export const noDuty = (name: string): Sentence =>
  error('E_NO_DUTY', `the station ${quote(name)} has nothing to do`, 'give it load, work or unload')

export const workEmpty = (): Sentence => error('E_WORK_EMPTY', '"work" has no task', 'name at least one task with its time')

export const breaksNeedAutomatic = (): Sentence =>
  error('E_WORKS_IN_BREAKS', 'only an automatic station can work in breaks', 'add "automatic: true", or remove "worksInBreaks"')

export const noLoad = (): Sentence => warning('W_NO_LOAD', 'no station loads products', 'carriers stay empty; give one station "load"')

export const noUnload = (): Sentence =>
  warning('W_NO_UNLOAD', 'no station unloads products', 'the output will be 0; give one station "unload"')

export const clearLong = (zone: string, clear: string, work: string): Sentence =>
  warning(
    'W_CLEAR_LONG',
    `leaving zone ${quote(zone)} takes ${clear}, longer than the longest work of ${work}`,
    'check speed, carrier length and clear times',
  )

// Stops

export const unknownPart = (found: string, near: string | null): Sentence =>
  error(
    'E_UNKNOWN_PART',
    `${quote(found)} is not a part of this line`,
    meant(near, 'name a station or a zone, or write "line", "every station", "every zone" or "every transfer"'),
  )

export const partAmbiguous = (found: string, forms: readonly string[]): Sentence =>
  error('E_PART_AMBIGUOUS', `${quote(found)} can mean more than one part`, `write ${choices(forms)}`)

export const noTransferThere = (zone: string): Sentence =>
  error('E_NO_TRANSFER', `zone ${quote(zone)} has no transfer`, 'write "zone …" for its conveyor, or name a zone with a transfer')

export const nobodyThere = (found: string): Sentence =>
  error('E_NO_PARTS', `${quote(found)} names nothing: the line has none`, 'remove this stop, or name a part that exists')

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

export const certainStop = (): Sentence => error('E_FAILS_AT_ONCE', 'the time to failure is always 0', 'give it a time above 0')

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

export const breaksOverlap = (): Sentence =>
  error('E_BREAKS_OVERLAP', 'this break begins before the one before it has ended', 'move it, or make one break of the two')

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

export const windowEmpty = (): Sentence =>
  error(
    'E_WINDOW',
    'nothing is left to count: the run ends before the warm-up does',
    '"end" counts from time 0 and must lie after "warmup"',
  )

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
