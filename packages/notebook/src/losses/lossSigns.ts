/** Why a cause of a loss waterfall may help where it stands. */
import type { LossResult } from '@loopwright/study'

type Loss = LossResult['causes'][number]

/** Why a line may make less without a cause. */
const WHY: Readonly<Record<Loss['kind'], string>> = {
  stop: 'later stops then fall on other products',
  'safety stops': 'later moves then fall on other carriers',
  breaks: 'in a break the conveyor goes on, and stations find carriers ready after it',
  operators: 'more carriers then stand where they are in the way of others',
  supply: 'more carriers then stand where they are in the way of others',
  receiver: 'carriers then come back to the load in another rhythm',
  exchange: 'carriers then queue elsewhere',
  'spread of times': 'with equal times the same waits come back every round',
  products: 'every product then takes the mean everywhere, and long work here no longer meets short work there',
  carriers: 'their number was chosen for the line as it stands, with the other causes in it',
}

/** Why a line may make more with this cause there: "in a break the conveyor goes on, and stations find carriers ready after it". */
export const whyMore = ({ kind }: Pick<Loss, 'kind'>): string => WHY[kind]
