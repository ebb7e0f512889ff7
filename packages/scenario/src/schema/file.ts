/** Schema of a whole scenario file, as people write it. */
import * as z from 'zod'
import {
  carriersSchema,
  cornerSchema,
  defaultsSchema,
  driveSchema,
  loopSchema,
  pathSchema,
  putInSchema,
  stationSchema,
  stopSchema,
  supplySchema,
  title,
  zoneSchema,
} from './parts.ts'
import { boolean, choice, count, duration, either, fraction, keys, list, name, named, number, text } from './words.ts'

const afterBreak = () => keys({ after: duration('from time 0'), lasts: duration() }, 'a break')
const shiftBreak = () =>
  keys(
    { after: duration('from the start of the shift').optional(), at: text('clock', 'a time of day instead').optional(), lasts: duration() },
    'a break of every shift',
  )
const breaks = () => list(shiftBreak(), 'breaks, repeated in every shift').optional()

const calendarSchema = keys(
  {
    shift: keys(
      { from: text('clock'), to: text('clock'), perDay: count('shifts of this length, back to back; default 1', 1440).optional() },
      'one kind of shift',
    ).optional(),
    shifts: named(
      keys({ from: text('clock'), to: text('clock'), breaks: breaks() }, 'a shift'),
      'different shifts of a day, in order',
    ).optional(),
    breaks: breaks(),
    conveyorDuringBreaks: boolean('the conveyor goes on in breaks; default true').optional(),
    judge: text('text', 'which shift counts, such as "second shift", "shifts 2 to 6", "day 2"'),
  },
  'shifts and breaks; time 0 is the start of the first shift',
)

const judgedSchema = keys(
  {
    name: text('text', 'such as "second shift"'),
    shifts: count('shifts within the window'),
    gross: duration('one shift'),
    net: duration('one shift without breaks'),
  },
  'what a calendar came to; written by the tool',
)

const optionSchema = keys(
  {
    share: either('percent', [text('percent'), named(text('percent'), 'share by variant')]),
    adds: named(duration(), 'extra time by task').optional(),
    title: title(),
  },
  'an addition to the variants, independent of the others',
)

const mixSchema = either('mix', [
  choice(['random', 'levelled'], 'shares stand beside the variants'),
  z.discriminatedUnion('kind', [
    keys({ kind: z.literal('random'), weights: named(number('weight, 0 or more'), 'weight by variant') }, 'drawn by weight'),
    keys({ kind: z.literal('levelled'), weights: named(number('whole weight'), 'whole weight by variant') }, 'spread evenly by weight'),
    keys({ kind: z.literal('pattern'), sequence: list(name('a variant'), 'repeated for ever') }, 'a fixed repeating pattern'),
    keys({ kind: z.literal('list'), sequence: list(name('a variant'), 'each product once') }, 'a list; then there are no more products'),
  ]),
])

/** A name, or a name with its title. */
const titled = (what: string) => either('titled', [name(what), keys({ name: name(what), title: title() }, 'a name with its title')])

const productsSchema = keys(
  {
    variants: either('variants', [
      named(
        either('share', [
          z.string(),
          z.number(),
          keys({ share: either('share', [z.string(), z.number()]), title: title() }, 'a share and a title'),
        ]),
        'share by variant',
      ),
      list(titled('a variant'), 'names'),
    ]).optional(),
    options: named(optionSchema, 'options by name').optional(),
    mix: mixSchema.optional(),
    groups: named(
      keys({ title: title(), variants: list(name('a variant, with its options'), 'variants') }, 'variants that people speak of together'),
      'instead of one group for each variant as written and each option',
    ).optional(),
  },
  'what is made',
)

export const fileSchema = keys(
  {
    format: z.literal(1).meta({ description: 'version of this format' }),
    question: text('text', 'the question that this file is to answer; it heads the pages that answer it'),
    name: text('text', 'name of the scenario'),
    plan: text('rate', 'wanted output: "320 per shift", "410 in 8 h", "42 per net hour", "40 per clock hour"').optional(),
    calendar: calendarSchema.optional(),
    judged: judgedSchema.optional(),
    warmup: duration('not counted; without a calendar').optional(),
    length: duration('counted after the warm-up; without a calendar').optional(),
    end: duration('end of the run from time 0, instead of "length"').optional(),
    breaks: list(afterBreak(), 'without a calendar').optional(),
    conveyorDuringBreaks: boolean('the conveyor goes on in breaks, without a calendar; default true').optional(),
    drive: driveSchema.optional(),
    carriers: carriersSchema,
    loop: loopSchema.optional(),
    putIn: putInSchema.optional(),
    takeOut: list(name('a zone'), 'zones of the loop that are not there').optional(),
    zones: named(zoneSchema, 'with "loop": own values by zone; without: all zones in travel order').optional(),
    paths: list(pathSchema, 'with "loop": own values; without: all paths').optional(),
    corners: either('corners', [cornerSchema, list(cornerSchema, 'several kinds')]).optional(),
    products: productsSchema.optional(),
    tasks: list(titled('a task'), 'order of the tasks; default: as they appear').optional(),
    defaults: defaultsSchema.optional(),
    stations: named(stationSchema, 'stations by name, in the order of their index', 'stations'),
    stops: named(stopSchema, 'breakdowns and short stops by name', 'stops').optional(),
    sections: named(list(name('a zone'), 'zones'), 'zones whose drives stop together; default: one section of all').optional(),
    operators: named(
      keys(
        {
          stations: list(name('a station'), 'stations that the operator covers'),
          start: name('station at time 0; default: the first').optional(),
        },
        'an operator',
        'operator',
      ),
      'named operators; other stations have operators of their own',
    ).optional(),
    walks: list(
      keys({ between: list(name('a station'), 'two stations'), lasts: duration('the same both ways') }, 'a walk'),
      'walks of the operators; 0 s where nothing is said',
    ).optional(),
    supply: supplySchema.optional(),
    inspections: named(fraction('share rejected'), 'inspecting tasks by name').optional(),
    rework: named(
      choice(['again', 'only'], 'again: repeated; only: done for rejected products alone'),
      'tasks of rejected products by name',
    ).optional(),
    repairCrews: either('crews', [choice(['unlimited'], 'default'), count('repairs that can go on at once')]).optional(),
    variations: named(named(z.any(), 'new values by path, such as drive.speed: 20 m/min'), 'named sets of changes').optional(),
  },
  'A loopwright scenario: one line, its work, its calendar',
)

/** The authoring form. */
export type ScenarioFile = z.input<typeof fileSchema>
