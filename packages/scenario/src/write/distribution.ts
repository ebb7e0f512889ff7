/** A duration as a file says it. */
import type { Distribution } from '@loopwright/stats'
import { shiftPoint } from '../text/decimal.ts'
import { flag, flow, flowList, number, seconds, text, type Value } from './nodes.ts'

/** A phrase where there is one, else the full form. */
export function distribution(d: Distribution): Value {
  switch (d.kind) {
    case 'constant':
      return seconds(d.value)
    case 'exponential':
      return text(`exponential ${d.mean} s`)
    case 'lognormal':
    case 'gamma':
      return text(`${d.kind === 'gamma' ? 'gamma ' : ''}${d.mean} s ± ${shiftPoint(d.cv, 2)} %`)
    case 'uniform':
      return text(`${d.min}..${d.max} s`)
    case 'triangular':
    case 'pert':
      return text(`${d.kind === 'pert' ? 'pert ' : ''}${d.min}..${d.mode}..${d.max} s`)
    case 'weibull':
      return flow([
        ['kind', text(d.kind)],
        ['shape', number(d.shape)],
        ['scale', seconds(d.scale)],
      ])
    case 'empirical':
      return flow([
        ['kind', text(d.kind)],
        ['unit', text('s')],
        ['values', flowList(d.values.map(number))],
        ['interpolate', flag(d.interpolate)],
      ])
    case 'discrete':
      return flow([
        ['kind', text(d.kind)],
        ['unit', text('s')],
        ['values', flowList(d.values.map(number))],
        ['weights', flowList(d.weights.map(number))],
      ])
    case 'replay':
      return flow([
        ['kind', text(d.kind)],
        ['unit', text('s')],
        ['values', flowList(d.values.map(number))],
      ])
    case 'occasional':
      return flow([
        ['kind', text(d.kind)],
        ['base', seconds(d.base)],
        ['probability', text(`${shiftPoint(d.probability, 2)} %`)],
        ['of', distribution(d.of)],
      ])
    case 'limited':
      return flow([
        ['kind', text(d.kind)],
        ['of', distribution(d.of)],
        ['shift', seconds(d.shift)],
        ['min', d.min === null ? null : seconds(d.min)],
        ['max', d.max === null ? null : seconds(d.max)],
      ])
  }
}
