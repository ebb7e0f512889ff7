/** Schema of the parts of a line: drive, zones, paths, corners, carriers, stations, stops. */
import * as z from 'zod'
import { distributionSchema, taskTimeSchema } from './distribution.ts'
import {
  acceleration,
  boolean,
  choice,
  count,
  duration,
  either,
  fraction,
  keys,
  length,
  list,
  name,
  named,
  speed,
  text,
  whole,
} from './words.ts'

const release = () => choice(['single', 'train'], 'how the next carrier may follow')
const sensor = () => length('how far the sensor lies before the stop point')
const turn = () => choice(['left', 'right', 'none'], 'for the drawing: which way travel turns here')

export const driveSchema = keys(
  {
    speed: speed('of all paths; "none" where all times are given').optional(),
    acceleration: acceleration('acceleration = braking; default "none": no ramps').optional(),
    reaction: duration('from the change of a sensor to the start of a drive; default 0.1 s').optional(),
    sensorBeforeStop: sensor().optional(),
    release: release().optional(),
    stagger: duration('between the starts of a train; default: the reaction time').optional(),
  },
  'what all zones have in common',
)

export const carriersSchema = keys(
  {
    count: count('how many carriers go round'),
    length: length('in travel direction; "none" where all clear times are given').optional(),
    width: length('across; it is the length in travel between two corners').optional(),
    start: either('start', [
      choice(['spread', 'packed', 'store'], 'where they stand at time 0'),
      list(name('a zone, or "store"'), 'one zone for each carrier'),
    ]).optional(),
  },
  'carriers',
)

const transferSchema = either('map', [
  z.literal('none'),
  keys(
    {
      lift: duration('change to high'),
      lower: duration('change to low'),
      enterOnlyIfExitClear: boolean('no place to wait; default false').optional(),
    },
    'a lifting belt unit',
  ),
])

const zoneFields = {
  length: length('length of the zone').optional(),
  sensorBeforeStop: sensor().optional(),
  release: release().optional(),
  speed: speed('of paths into this zone').optional(),
  acceleration: acceleration('of paths into this zone').optional(),
  turn: turn().optional(),
  transfer: transferSchema.optional(),
  divert: choice(['first', 'alternate', 'free'], 'which of several ways out is taken; default first').optional(),
  merge: either('merge', [
    choice(['waiting', 'alternate'], 'which of several carriers comes in; default waiting: the longest waiting'),
    keys(
      { priority: list(name('a zone, or "store"'), 'zones that they come from, the first first') },
      'right of way by where they come from',
    ),
  ]).optional(),
}

export const zoneSchema = keys(zoneFields, 'own values of one zone')
export const loopSchema = either('loop', [
  text('loop'),
  list(
    either('loop', [text('loop', 'a group such as "6 × 1.5 m"'), keys({ name: name().optional(), ...zoneFields }, 'one zone')]),
    'zones and groups in travel order',
  ),
])

const putInOne = keys(
  {
    before: name('a station or a zone').optional(),
    after: name('a station or a zone').optional(),
    zones: count('how many; default 1').optional(),
    length: length('of each; default: that of the zone beside which they stand').optional(),
  },
  'zones put into the loop',
)
export const putInSchema = either('putIn', [putInOne, list(putInOne, 'several places')])

const position = () => choice(['low', 'high'], 'what a transfer at this end must stand at')
const takesSchema = keys(
  {
    variants: list(name('a variant'), 'products of these variants').optional(),
    load: choice(['empty', 'loaded'], 'carriers without, or with a product').optional(),
    rejected: boolean('true: rejected products only; false: all others').optional(),
    forStation: name('carriers that have a duty left at this station').optional(),
  },
  'whom the path takes; all of it must hold',
)

const pathFields = keys(
  {
    from: name('a zone, or "store"'),
    to: name('a zone, or "store"').optional(),
    distance: length('between the stop points; default: length of the next zone').optional(),
    speed: speed().optional(),
    acceleration: acceleration().optional(),
    across: boolean('the carrier travels sideways').optional(),
    fromPosition: position().optional(),
    toPosition: position().optional(),
    move: distributionSchema.meta({ description: 'given move time; default "derived" from the drive' }).optional(),
    clear: distributionSchema.meta({ description: 'given clear time; "move": the same as the move; default "derived"' }).optional(),
    takes: takesSchema.optional(),
    push: name('a station: its operator pushes the carrier along this path, in the time "move"').optional(),
    pull: name('a station: its operator pulls the carrier along this path, in the time "move"').optional(),
  },
  'a way from one zone to the next',
)
export const pathSchema = either('path', [text('path', 'zones in a row, such as "Z01 > Z02 > Z03"'), pathFields])

export const cornerSchema = keys(
  {
    zones: list(name('a zone'), 'zones with a transfer'),
    turn: turn(),
    lift: duration('change to high'),
    lower: duration('change to low'),
    enterOnlyIfExitClear: boolean('no place to wait; default false').optional(),
    sensorBeforeStop: sensor().optional(),
  },
  'transfers of one kind',
)

export const title = () => text('text', 'what people call it; default: its name').optional()
const tasks = (description: string) => named(taskTimeSchema, description, 'tasks')
export const supplySchema = either('supply', [
  choice(['always'], 'products are always there'),
  keys(
    {
      name: text('name', 'names its random stream; default: its place').optional(),
      every: distributionSchema.meta({ description: 'time between two arrivals' }).optional(),
      times: list(duration('from time 0'), 'instants of the arrivals, in order; then there are no more').optional(),
      queue: either('queue', [
        choice(['unlimited'], 'no limit'),
        whole('places for products that wait; who finds them full is turned away'),
      ]).optional(),
    },
    'products that arrive',
  ),
])

const stationDefaults = {
  operatorsNeeded: count('people that each duty needs; default 1', 100).optional(),
  release: distributionSchema.meta({ description: 'from the end of the work to the release; default 0 s' }).optional(),
  automatic: boolean('works without an operator; default false').optional(),
  worksInBreaks: boolean('only an automatic station can; default false').optional(),
}

export const stationSchema = keys(
  {
    name: text('text', 'what people call it; default: its key').optional(),
    zone: name('where it stands'),
    unload: tasks('takes the old product off; tasks by name').optional(),
    load: tasks('takes the next product; tasks by name').optional(),
    work: tasks('tasks by name').optional(),
    accepts: choice(['good', 'rejected', 'all'], 'products that its unload takes off; default good').optional(),
    supply: supplySchema.optional(),
    receiver: keys(
      { cycle: distributionSchema.meta({ description: 'for one product' }), queue: whole('places before it; default 0').optional() },
      'what its unloaded products go to',
    ).optional(),
    safetyStop: keys(
      {
        chance: fraction('of a move that touches this zone: somebody is in the way'),
        reset: distributionSchema.meta({ description: 'from the stop to the reset' }),
      },
      'the section of this zone stops when somebody is in the way',
    ).optional(),
    ...stationDefaults,
  },
  'work at one zone, in the order unload, load, work',
)

export const defaultsSchema = keys(
  {
    station: keys(stationDefaults, 'for every station that says nothing else').optional(),
    task: keys({ cv: fraction('spread of every task given by its mean') }, 'for every task').optional(),
  },
  'values for all',
)

export const stopSchema = keys(
  {
    at: either('part', [
      text('part', 'a station or zone, "line", "every station", "every zone", "every transfer"'),
      list(text('part'), 'several parts, each with a source of its own'),
      keys(
        {
          station: name().optional(),
          zone: name().optional(),
          transfer: name('a zone with a transfer').optional(),
          line: choice(['whole'], 'all zones at once').optional(),
          section: name().optional(),
        },
        'one part by its kind',
      ),
    ]),
    after: distributionSchema.meta({ description: 'time to failure' }).optional(),
    chance: text('chance', 'of a station per cycle, such as "1.5 per 100 cycles"').optional(),
    lasts: distributionSchema.meta({ description: 'time to repair' }),
    clock: choice(['operating', 'calendar'], 'what the time to failure counts; default operating').optional(),
    title: title(),
    entry: name('the stop that it is a part of; written by the tool').optional(),
  },
  'a source of breakdowns',
)
