// What a line is, without a run
export { lineFacts } from './lineFacts.ts'
export type { LineFacts, StationFacts, StopFacts } from './lineFacts.ts'
export { meanTaskSeconds } from './lineChange.ts'
export { limitWarnings } from './limitWarnings.ts'
export type { LimitWarning } from './limitWarnings.ts'
export { eventWords, tooManyEvents } from '../runs/expectedEvents.ts'

// The same line, changed
export { withCarriers } from './withCarriers.ts'
export { withPlaces, placesOf } from '../order/places.ts'
export type { Places, PlacesAsked } from '../order/places.ts'
export type { PlaceRules } from '../order/stationPlaces.ts'
export type { PlaceRequest } from '../order/placeRules.ts'

// What a study changes
export { driversOf } from '../drivers/drivers.ts'
export type { Driver } from '../drivers/drivers.ts'
export { wholeChanges } from './wholeChanges.ts'
export { lossCauses } from '../losses/lossCauses.ts'
export type { LossCause, LossCauseOptions } from '../losses/lossCauses.ts'

// Tasks shared anew
export { lineTasks } from '../balance/lineTasks.ts'
export { taskBalance } from '../balance/taskBalance.ts'
export type { TaskToShare, BalanceRequest, BalanceResult } from '../balance/taskBalance.ts'
