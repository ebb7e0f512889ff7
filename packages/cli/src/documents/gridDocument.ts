/** The document of `loopwright grid --json`. */
import type { GridPoint, GridResult } from '@loopwright/study/compare'
import { differenceSchema } from './compareDocument.ts'
import { scenarioHead, scenarioSchema, type Source, studyHead, windowSchema } from './head.ts'
import {
  chance,
  count,
  documentSchema,
  list,
  map,
  outputInterval,
  number,
  orNull,
  quantile,
  record,
  type Schema,
  share,
  text,
  verdict,
} from './schemaParts.ts'
import { formHead } from './form.ts'

export function gridDocument(source: Source, result: GridResult): object {
  const { kind, engineVersion, seed, replications, partial, level, window, factors, points, base, outside, best, effects } = result
  const nameOf = (factor: number): string => factors[factor]!.name
  const levelOf = (factor: number, at: number): string => factors[factor]!.levels[at]!
  return {
    ...formHead(kind),
    scenario: scenarioHead(source),
    engineVersion,
    seed,
    replications,
    partial,
    level,
    window,
    factors,
    points: points.map((point) => pointDocument(point, result)),
    base,
    outside: outside === null ? null : pointDocument(outside, result),
    best,
    maybeBest: result.maybeBest,
    nearBest: result.nearBest,
    effects:
      effects === null
        ? null
        : effects.main.map(({ factor, means, least, most, span }) => ({
            factor: nameOf(factor),
            means,
            least: levelOf(factor, least),
            most: levelOf(factor, most),
            span,
          })),
    interactions:
      effects === null
        ? null
        : effects.interactions.map(({ first, second, from, to, here, there, gainHere, gainThere, difference }) => ({
            factor: nameOf(first),
            from: levelOf(first, from),
            to: levelOf(first, to),
            other: nameOf(second),
            here: levelOf(second, here),
            there: levelOf(second, there),
            gainHere,
            gainThere,
            difference,
          })),
  }
}

function pointDocument({ levels, ...point }: GridPoint, { factors }: GridResult): object {
  return { setting: Object.fromEntries(levels.map((level, factor) => [factors[factor]!.name, factors[factor]!.levels[level]!])), ...point }
}

const pointSchema = (of: string): Schema =>
  record(
    {
      setting: map(text('level'), 'level of each factor, by its name; empty for the line as it stands'),
      carriers: count('number of carriers'),
      plan: orNull(number('units wanted per window')),
      units: list(number('units'), 'output per window, by replication'),
      mean: orNull(outputInterval('output per window, units')),
      p10: orNull(quantile('output that nine of ten windows exceed')),
      meetsPlan: orNull(chance('windows with at least the plan')),
      planVerdict: orNull(verdict('whether nine of ten windows meet the plan')),
      gridlocks: count('replications that ended in gridlock'),
      outOfProducts: count('replications that ended out of products'),
      toBase: orNull(differenceSchema('this setting less the base, units per window')),
    },
    of,
  )

/** JSON Schema of that document. */
export function gridSchema(): Schema {
  const place = (of: string): Schema => orNull(count(`${of}: place in points, from 0`))
  return documentSchema(
    'A grid of loopwright',
    record(
      {
        ...studyHead('grid'),
        scenario: scenarioSchema('what the levels were put into'),
        level: share('of all differences from the base together, of all effects, of all interactions'),
        window: windowSchema(),
        factors: list(
          record({ name: text('"carriers", or a path'), levels: list(text('level'), 'in the order given') }, 'one factor'),
          'what was varied',
        ),
        points: list(pointSchema('one setting'), 'every setting, the levels of the last factor fastest'),
        base: place('what the settings are set beside; null: the line as it stands, which is none of them'),
        outside: orNull(pointSchema('the line as it stands, where it is none of the settings')),
        best: place('greatest mean without gridlock'),
        maybeBest: list(count('place in points'), 'settings that cannot be told from the best'),
        nearBest: list(count('place in points'), 'settings that are shown to make at least 99 % of the best'),
        effects: orNull(
          list(
            record(
              {
                factor: text('its name'),
                means: list(outputInterval('output per window, averaged over the other factors'), 'by level'),
                least: text('level with the least mean'),
                most: text('level with the greatest mean'),
                span: orNull(differenceSchema('most less least, units per window; null: one level')),
              },
              'one factor',
            ),
            'what each factor does',
          ),
        ),
        interactions: orNull(
          list(
            record(
              {
                factor: text('its name'),
                from: text('level'),
                to: text('level'),
                other: text('name of the other factor'),
                here: text('level of the other'),
                there: text('level of the other'),
                gainHere: number('units per window that the step from … to brings at the one level of the other'),
                gainThere: number('and at the other level'),
                difference: differenceSchema('gain there less gain here, units per window'),
              },
              'two factors, at the levels where they depend on each other most',
            ),
            'whether what one factor does depends on another',
          ),
        ),
      },
      'What `loopwright grid --json` prints. Units per window, times in seconds, shares from 0 to 1.',
    ),
  )
}
