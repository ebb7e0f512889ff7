/** For tests/shapes.test.ts: says which objects of a line a run gives another shape. Run with --allow-natives-syntax. */
import { resetLine } from '../../packages/line/src/build/start.ts'
import { buildLine } from '../../packages/line/src/build/build.ts'
import { handleInstant } from '../../packages/line/src/instant/instant.ts'
import { objectsOf } from '../helpers/columnsOf.ts'
import { GENERAL_LINES } from './generalLines.ts'

const haveSameShape = new Function('a', 'b', 'return %HaveSameMap(a, b)') as (a: object, b: object) => boolean
console.log(haveSameShape({ now: 0 }, { later: 0 }), haveSameShape({ now: 0 }, { now: 1 }))

const make = GENERAL_LINES[process.argv[2]!]!
// with the second line literals get the shapes that they keep
buildLine(make())
buildLine(make())
const used = buildLine(make())
// taken apart before the run: to look at an object of an old shape gives it the new one
const [ofUsed, ofKept] = [objectsOf(used), new Map(objectsOf(buildLine(make())))]
resetLine(used, 'seed', 0)
handleInstant(used)
for (let instants = 0; instants < 20_000 && used.queue.size > 0; instants++) {
  used.now = used.queue.firstTime()
  handleInstant(used)
}
for (const [at, object] of ofUsed) if (!haveSameShape(object, ofKept.get(at)!)) console.log(`${at} changed`)
const ofNext = new Map(objectsOf(buildLine(make())))
for (const [at, object] of ofUsed) if (!haveSameShape(object, ofNext.get(at)!)) console.log(`${at} differs from the next line's`)
