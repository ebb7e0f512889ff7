/**
 * Every sentence that can be said about a line wherever it was written, in a file or in code: one function each, one code each. What only a file can get
 * wrong has its sentences in the package `scenario`. It may be over 300 lines because they stand together, to be read and edited as one text.
 */
import { error, type Sentence, sentenceWords, warning } from './sentence.ts'

const { all, choices, meant, plural, quote, range, shorten, zoneList } = sentenceWords

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

/** Every sentence about a line that is wrong or doubtful. */
export const sentences = {
  // Shape

  missing: (key: string, expected: string): Sentence => error('E_MISSING', `"${key}" is missing`, `add "${key}:" with ${expected}`),

  unknownKey: (key: string, near: string | null, known: readonly string[]): Sentence =>
    error('E_UNKNOWN_KEY', `there is no key ${quote(key)} here`, meant(near, `the keys here are ${known.join(', ')}`)),

  wrongType: (expected: string, found: string): Sentence => error('E_TYPE', `found ${found}`, `write ${expected}`),

  notAChoice: (found: string, near: string | null, known: readonly string[]): Sentence =>
    error(
      'E_CHOICE',
      `${quote(found)} cannot stand here`,
      `${near === null ? 'it is' : `did you mean "${near}"? It is`} ${choices(known, 20)}`,
    ),

  notWhole: (found: string): Sentence =>
    error('E_NOT_WHOLE', `${shorten(found)} is not a whole number`, 'write a whole number without a unit'),

  tooSmall: (found: string, least: number): Sentence => error('E_TOO_SMALL', `${shorten(found)} is too small`, `the least is ${least}`),

  notFinite: (found: string): Sentence => error('E_NOT_FINITE', `${shorten(found)} is not a usable number`, 'write an ordinary number'),

  onlyOneOf: (here: string, other: string, why: string): Sentence =>
    error('E_ONLY_ONE_OF', `"${here}" and "${other}" do not go together`, `${why}; remove one of them`),

  neither: (keys: readonly string[], why: string): Sentence => error('E_NEITHER', `${choices(keys)} is needed`, why),

  // Names

  badName: (name: string, reason: string): Sentence =>
    error('E_NAME', `${quote(name)} cannot be a name: ${reason}`, 'use letters, digits, blanks and signs other than "/", at most 200'),

  duplicateName: (what: string, name: string): Sentence =>
    error(
      'E_DUPLICATE_NAME',
      `there are two ${what} called ${quote(name)}`,
      'names feed the random streams and must differ; rename one of them',
    ),

  unknownZone: (name: string, near: string | null, known: readonly string[]): Sentence =>
    error(
      'E_UNKNOWN_ZONE',
      `there is no zone called ${quote(name)}`,
      meant(beyond(name, known) ? null : near, known.length === 0 ? 'no zones are known' : `zones are ${range(known)}`),
    ),

  unknownStation: (name: string, near: string | null, known: readonly string[]): Sentence =>
    error('E_UNKNOWN_STATION', `there is no station called ${quote(name)}`, meant(near, `stations are ${all(known)}`)),

  unknownSection: (name: string, known: readonly string[]): Sentence =>
    error(
      'E_UNKNOWN_SECTION',
      `there is no section called ${quote(name)}`,
      known.length === 0 ? 'the line has no sections' : `sections are ${all(known)}`,
    ),

  unknownVariant: (name: string, near: string | null, known: readonly string[]): Sentence =>
    error('E_UNKNOWN_VARIANT', `there is no variant called ${quote(name)}`, meant(near, `variants are ${all(known)}`)),

  unknownTask: (name: string, near: string | null, known: readonly string[]): Sentence =>
    error(
      'E_UNKNOWN_TASK',
      `there is no task called ${quote(name)}`,
      meant(near, known.length === 0 ? 'no station has a task' : `tasks are ${all(known)}`),
    ),

  // Quantities

  negative: (found: string): Sentence => error('E_NEGATIVE', `${quote(found)} is negative`, 'write 0 or more'),

  zero: (found: string): Sentence => error('E_ZERO', `${quote(found)} is zero`, 'write more than 0'),

  // Durations as distributions

  shareBeyond: (found: string): Sentence =>
    error('E_SHARE_BEYOND', `${quote(found)} is not between 0 and 100 %`, 'write a share such as "1.5 %" or 0.015'),

  /** @param what  such as `times of 9e9 s on average are` */
  timesBeyondReach: (what: string): Sentence =>
    error('E_TIMES_REACH', `${what} too long to compute with`, 'the most is 2^32 s, about 136 years'),

  spreadBeyondReach: (): Sentence =>
    error('E_SPREAD_REACH', 'the spread of these times is too large to compute with', 'change the parameters of this distribution'),

  moveBeyondReach: (zones: readonly string[]): Sentence =>
    error(
      'E_MOVE_REACH',
      `a move out of ${zoneList(zones)} takes more than 2^32 s, about 136 years`,
      'check speed, acceleration and distance',
    ),

  distributionRefused: (reason: string): Sentence => error('E_DISTRIBUTION', reason, 'change the parameters of this distribution'),

  listEmpty: (): Sentence => error('E_LIST_EMPTY', 'the list is empty', 'give at least one value'),

  // Zones and paths

  noZones: (): Sentence => error('E_NO_ZONES', 'the line has no zones', 'write it like "loop: 22 zones of 1.5 m"'),

  zoneWithoutLength: (zones: readonly string[]): Sentence =>
    error(
      'E_ZONE_LENGTH',
      `the length of ${zoneList(zones)} is not known, and the way in needs it`,
      'give the zone a length, or the path a distance, or both move and clear times',
    ),

  pathTwice: (from: string, to: string): Sentence =>
    error('E_PATH_TWICE', `the path from ${quote(from)} to ${quote(to)} stands here a second time`, 'keep one of the two'),

  pathsMissing: (): Sentence =>
    error('E_PATHS_MISSING', 'the zones have no paths', 'write "loop:" for one closed loop, or list the ways, such as "Z01 > Z02 > Z01"'),

  zoneWithoutWay: (zones: readonly string[], into: boolean): Sentence =>
    warning(
      'W_ZONE_WITHOUT_WAY',
      `no path leads ${into ? 'to' : 'out of'} ${zones.length === 1 ? 'zone' : 'the zones'} ${all(zones)}`,
      into ? 'no carrier will come there unless it starts there' : 'a carrier that comes there stays for ever',
    ),

  unknownPlace: (name: string, near: string | null): Sentence =>
    error('E_UNKNOWN_PLACE', `there is no station or zone called ${quote(name)}`, meant(near, 'name a station, or a zone of the loop')),

  storeWithoutWay: (): Sentence =>
    error(
      'E_STORE_WITHOUT_WAY',
      'the carriers start in the store, but no path leads out of it',
      'add a way such as "store > Z01", or let them start on the line',
    ),

  badChain: (found: string): Sentence =>
    error('E_PATH_CHAIN', `${quote(found)} is not a way`, 'write zones in a row with ">" between them, such as "Z01 > Z02 > Z03"'),

  pathToItself: (zone: string): Sentence =>
    error('E_PATH_TO_ITSELF', `the path out of ${quote(zone)} leads back to itself`, 'name another zone in "to"'),

  storeDistance: (zone: string): Sentence =>
    error(
      'E_STORE_DISTANCE',
      `how far is it from zone ${quote(zone)} to the store? The zones are not all of one length`,
      'give the path a "distance", or a "move" and a "clear"',
    ),

  manualNeedsMove: (kind: string): Sentence =>
    error('E_MANUAL_MOVE', `a ${kind} needs its time`, 'add "move: 6 s", or whatever the operator takes'),

  sectionTwice: (zone: string): Sentence =>
    error('E_SECTION_TWICE', `zone ${quote(zone)} is in two sections`, 'a zone belongs to one safety circuit at most'),

  safetyWithoutSection: (zone: string): Sentence =>
    error(
      'E_SAFETY_SECTION',
      `zone ${quote(zone)} is in no section that could stop`,
      'put the zone into a section, or remove the safety stop',
    ),

  walkTwice: (): Sentence =>
    error('E_WALK_TWICE', 'the walk between these two stations is given before', 'keep one of the two: it takes as long there as back'),
  walkBetween: (): Sentence => error('E_WALK', 'a walk is between two different stations', 'write "between: [S1, S4]"'),

  operatorsFew: (station: string, needed: number, there: number): Sentence =>
    warning(
      'W_OPERATORS_FEW',
      `station ${quote(station)} needs ${plural(needed, 'operator')}, and ${there} ${there === 1 ? 'covers' : 'cover'} it`,
      'its work never starts, and the line stands still; let more operators cover it, or need fewer',
    ),

  inspectionPlace: (task: string): Sentence =>
    error(
      'E_INSPECTION',
      `the unload task ${quote(task)} cannot inspect`,
      'inspect in a load or work task, before the product is taken off',
    ),

  reworkPlace: (task: string): Sentence =>
    error('E_REWORK', `the task ${quote(task)} of an unload or load cannot be rework`, 'mark work tasks only'),

  supplyForm: (): Sentence =>
    error('E_SUPPLY', 'a supply needs either "every" or "times"', 'give one of the two, or write "supply: always"'),

  supplyAtOnce: (): Sentence =>
    error(
      'E_SUPPLY_AT_ONCE',
      'the time between two arrivals is 0 on average',
      'products without end would come at once; give a time above 0, or write "supply: always"',
    ),

  timesOrder: (): Sentence => error('E_TIMES_ORDER', 'the times do not rise', 'write them in the order of the clock'),

  speedNeeded: (zones: readonly string[]): Sentence =>
    error(
      'E_SPEED_NEEDED',
      `no speed is known for the way out of ${zoneList(zones)}`,
      'give "drive" a speed, such as "15 m/min", or the paths a move time',
    ),

  carrierSizeNeeded: (which: string, zones: readonly string[]): Sentence =>
    error(
      'E_CARRIER_SIZE',
      `the ${which} of a carrier is not known, and the clear time of ${zoneList(zones)} needs it`,
      `give "carriers" a ${which}, such as "1.2 m", or the paths a clear time`,
    ),

  clearMoveWithoutMove: (): Sentence =>
    error('E_CLEAR_MOVE', '"clear: move" means the given move time, and there is none', 'give "move" a time, or leave "clear" out'),

  sensorTooEarly: (zones: readonly string[]): Sentence =>
    error(
      'E_SENSOR',
      `the sensor of ${zoneList(zones)} lies a whole carrier or more before the stop point`,
      'it would see the tail pass before the carrier has started; make "sensorBeforeStop" smaller than the carrier',
    ),

  carrierTooLong: (which: string, zones: readonly string[], carrier: string, length: string): Sentence =>
    error(
      'E_CARRIER_LONG',
      which === 'width'
        ? `a carrier is ${carrier} wide, travels sideways here, and does not fit ${zoneList(zones)} of ${length}`
        : `a carrier is ${carrier} long and does not fit ${zoneList(zones)} of ${length}`,
      'a zone holds one whole carrier: lengthen the zone, or make the carrier smaller',
    ),

  trainAtTransfer: (zone: string): Sentence =>
    error(
      'E_TRAIN_TRANSFER',
      `zone ${quote(zone)} has a transfer and cannot be left by train release`,
      'leave "release" out there; a transfer is always left by single release',
    ),

  positionWithoutTransfer: (zone: string): Sentence =>
    error('E_POSITION', `zone ${quote(zone)} has no transfer that could stand high`, 'write "low", or give the zone a transfer'),

  movesTakeNoTime: (): Sentence =>
    error(
      'E_NO_MOVE_TIME',
      'no move takes any time',
      'a carrier would go round for ever within one instant; give at least one move a time above 0',
    ),

  allExitClear: (): Sentence =>
    error(
      'E_ALL_EXIT_CLEAR',
      'every zone is a transfer that is entered only if its exit is clear',
      'a line needs storage zones in which carriers can wait',
    ),

  cornersOdd: (count: number): Sentence =>
    warning(
      'W_CORNERS_ODD',
      `${plural(count, 'transfer')} with a change of direction: after one lap the carrier would have turned sideways`,
      'a loop needs an even number of them',
    ),

  // Carriers

  carriersFillLoop: (count: number, zones: number): Sentence =>
    error(
      'E_CARRIERS_FILL',
      `${plural(count, 'carrier')} in ${plural(zones, 'zone')} cannot move`,
      `at least one zone must be free: at most ${zones - 1}`,
    ),

  carriersDoNotFit: (count: number, places: number): Sentence =>
    error(
      'E_CARRIERS_PLACE',
      `${plural(count, 'carrier')} and only ${plural(places, 'storage zone')} to start in`,
      `transfers that are entered only if their exit is clear are no place to stand: at most ${places}`,
    ),

  carriersGridlock: (count: number): Sentence =>
    warning(
      'W_GRIDLOCK',
      `with ${plural(count, 'carrier')} every storage zone is full and nothing can move`,
      `the result is gridlock at once; use ${count - 1} or fewer`,
    ),

  startLength: (places: number, count: number): Sentence =>
    error(
      'E_START_COUNT',
      `${plural(places, 'start zone')} for ${plural(count, 'carrier')}`,
      'name one zone for each carrier, or use "spread"',
    ),

  startTwice: (zone: string): Sentence => error('E_START_TWICE', `two carriers start in zone ${quote(zone)}`, 'a zone holds one carrier'),

  // What is probably not meant

  /** @param between  the unload station behind which and the load station before which they stand; null where it is no loop */
  stationUnreached: (stations: readonly string[], between: readonly [string, string] | null): Sentence =>
    warning(
      'W_STATION_UNREACHED',
      `no product comes to station${stations.length === 1 ? '' : 's'} ${all(stations)}${between === null ? '' : `: behind the unload station ${quote(between[0])} and before the load station ${quote(between[1])} the carriers are empty`}`,
      between === null
        ? 'no way leads there from a load station; check the paths and whom they take'
        : 'carriers run in the order of the zones; move the station between load and unload, or change these two',
    ),

  goodsIdle: (station: string, key: 'supply' | 'receiver' | 'accepts', duty: 'load' | 'unload'): Sentence =>
    warning(
      'W_GOODS_IDLE',
      `station ${quote(station)} ${duty}s nothing: its ${quote(key)} changes nothing`,
      `give it "${duty}", or leave "${key}" out`,
    ),

  /** @param first  stations at which products have these tasks */
  nothingLeft: (station: string, tasks: readonly string[], first: readonly string[]): Sentence =>
    warning(
      'W_NOTHING_LEFT',
      `nothing is left to do at station ${quote(station)}: every product has had ${all(tasks)} at ${all(first)} before it gets there`,
      'a task is done once for a product, at the first station that has it; give different work a name of its own, or lead some products past the first station',
    ),

  /** @param before  the load stations that empty carriers come to */
  loadUnreached: (station: string, before: readonly string[]): Sentence =>
    warning(
      'W_LOAD_UNREACHED',
      `no empty carrier comes to the load station ${quote(station)}: ${all(before)} load${before.length === 1 ? 's' : ''} every one before it gets there`,
      'lead some empty carriers past the first load station (a way of their own, or a choice of ways), unload between the two, or leave this one out',
    ),

  spurNeverEntered: (transfer: string, zone: string): Sentence =>
    warning(
      'W_SPUR_CLOSED',
      `no carrier ever enters ${quote(transfer)}: its only way out is zone ${quote(zone)}, where the carrier would come from`,
      'it is entered only if its exit is clear, and the carrier itself stands there; let carriers wait in it (enterOnlyIfExitClear: false), or lead it elsewhere',
    ),

  /** @param instead  where the earlier way leads */
  wayNeverTaken: (zone: string, to: string, instead: string): Sentence =>
    warning(
      'W_WAY_NEVER_TAKEN',
      `no carrier ever takes this way from ${quote(zone)} to ${quote(to)}: ${to === instead ? 'another way there' : `the way to ${quote(instead)}`} comes first and takes all that it would take`,
      'say whom it takes ("takes"), let the zone choose in turn (divert: alternate) or by what is free (divert: free), or leave one of the two out; "loop" brings the driven ways with it: for a way that is pushed or pulled instead, write "zones" and all "paths"',
    ),

  // Products

  sharesZero: (): Sentence => error('E_SHARES_ZERO', 'all shares are zero', 'at least one variant must be made'),

  noVariants: (): Sentence => error('E_NO_VARIANTS', 'there are no variants', 'name at least one, or leave "variants" out'),

  mixNeeds: (kind: string, needs: 'shares' | 'no options'): Sentence =>
    error(
      'E_MIX',
      `the mix "${kind}" needs ${needs === 'shares' ? 'a share beside each variant' : 'variants without options'}`,
      needs === 'shares'
        ? 'give each variant one, or give the mix a sequence of variants'
        : 'leave the options out, or write the mix as "random" or "levelled", with a share beside each variant',
    ),

  mixAndShares: (): Sentence =>
    error(
      'E_MIX_SHARES',
      'shares are given twice: beside the variants and in the mix',
      'list the variants by name only, or leave the weights out of the mix',
    ),

  weightsWhole: (): Sentence => error('E_WEIGHTS_WHOLE', 'a levelled mix counts in whole weights', 'write whole numbers'),

  // Stations and tasks

  zoneTaken: (zone: string, other: string): Sentence =>
    error(
      'E_ZONE_TAKEN',
      `zone ${quote(zone)} already has the station ${quote(other)}`,
      'a zone holds at most one station; choose another zone',
    ),

  taskTwice: (task: string): Sentence =>
    error('E_TASK_TWICE', `the task ${quote(task)} stands twice in one station`, 'two tasks of one station need two names'),

  timeMissing: (variants: readonly string[]): Sentence =>
    error(
      'E_TIME_MISSING',
      `no time is given for ${all(variants)}`,
      'every variant needs one; write "none" for a variant that does not have this task',
    ),

  timeForNobody: (): Sentence =>
    error('E_TIME_FOR_NOBODY', 'no variant has this task', 'give at least one variant a time, or remove the task'),

  putInLoop: (): Sentence =>
    error('E_PUT_IN_LOOP', 'zones are put into or taken out of a "loop", and there is none', 'change "zones" and "paths" instead'),
  tooManyZones: (count: string, most: number): Sentence =>
    error('E_TOO_MANY_ZONES', `${count} zones are more than can be read`, `the most is ${most}`),
  noDuty: (name: string): Sentence => error('E_NO_DUTY', `the station ${quote(name)} has nothing to do`, 'give it load, work or unload'),

  workEmpty: (): Sentence => error('E_WORK_EMPTY', '"work" has no task', 'name at least one task with its time'),

  breaksNeedAutomatic: (): Sentence =>
    error('E_WORKS_IN_BREAKS', 'only an automatic station can work in breaks', 'add "automatic: true", or remove "worksInBreaks"'),

  noLoad: (): Sentence => warning('W_NO_LOAD', 'no station loads products', 'carriers stay empty; give one station "load"'),

  noUnload: (): Sentence => warning('W_NO_UNLOAD', 'no station unloads products', 'the output will be 0; give one station "unload"'),

  clearLong: (zone: string, clear: string, work: string): Sentence =>
    warning(
      'W_CLEAR_LONG',
      `leaving zone ${quote(zone)} takes ${clear}, longer than the longest work of ${work}`,
      'check speed, carrier length and clear times',
    ),

  // Stops

  unknownPart: (found: string, near: string | null): Sentence =>
    error(
      'E_UNKNOWN_PART',
      `${quote(found)} is not a part of this line`,
      meant(near, 'name a station or a zone, or write "line", "every station", "every zone" or "every transfer"'),
    ),

  partAmbiguous: (found: string, forms: readonly string[]): Sentence =>
    error('E_PART_AMBIGUOUS', `${quote(found)} can mean more than one part`, `write ${choices(forms)}`),

  noTransferThere: (zone: string): Sentence =>
    error('E_NO_TRANSFER', `zone ${quote(zone)} has no transfer`, 'write "zone …" for its conveyor, or name a zone with a transfer'),

  nobodyThere: (found: string): Sentence =>
    error('E_NO_PARTS', `${quote(found)} names nothing: the line has none`, 'remove this stop, or name a part that exists'),

  certainStop: (): Sentence => error('E_FAILS_AT_ONCE', 'the time to failure is always 0', 'give it a time above 0'),

  // Calendar

  breaksOverlap: (): Sentence =>
    error('E_BREAKS_OVERLAP', 'this break begins before the one before it has ended', 'move it, or make one break of the two'),

  windowEmpty: (): Sentence =>
    error(
      'E_WINDOW',
      'nothing is left to count: the run ends before the warm-up does',
      '"end" counts from time 0 and must lie after "warmup"',
    ),
}
