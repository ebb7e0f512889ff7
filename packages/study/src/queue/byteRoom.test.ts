import { expect, test } from 'vitest'
import { ByteRoom } from './byteRoom.ts'

/** Who is in, in the order in which they went in. */
function visitors(room: ByteRoom): { readonly inside: string[]; readonly come: (name: string, bytes: number) => Promise<void> } {
  const inside: string[] = []
  return { inside, come: (name, bytes) => room.enter(bytes).then(() => void inside.push(name)) }
}
const moment = () => new Promise((resolve) => setImmediate(resolve))

test('a large one that leaves makes room for all the small ones that fit', async () => {
  const room = new ByteRoom(10)
  const { inside, come } = visitors(room)
  for (const [name, bytes] of [
    ['large', 9],
    ['a', 3],
    ['b', 3],
    ['c', 3],
    ['d', 3],
  ] as const)
    void come(name, bytes)
  await moment()
  expect(inside).toEqual(['large'])
  room.leave(9)
  await moment()
  expect(inside).toEqual(['large', 'a', 'b', 'c'])
  room.leave(3)
  await moment()
  expect(inside).toEqual(['large', 'a', 'b', 'c', 'd'])
})

test('nobody overtakes: a small one waits behind a large one, which goes in when the room is empty though it is too large', async () => {
  const room = new ByteRoom(10)
  const { inside, come } = visitors(room)
  void come('first', 5)
  void come('huge', 20)
  void come('small', 1)
  await moment()
  expect(inside).toEqual(['first'])
  room.leave(5)
  await moment()
  expect(inside).toEqual(['first', 'huge'])
  room.leave(20)
  await moment()
  expect(inside).toEqual(['first', 'huge', 'small'])
})
