/** Runs in a process of its own: tries one number after another until the time is over. Its words: seconds, first number, how many, readers. Tells each finding as a line of JSON, and before each try what it is at. */
import { READERS } from './readers.ts'
import { tried } from './tried.ts'

const [seconds, first, most] = process.argv.slice(2, 5).map(Number) as [number, number, number]
const only = process.argv.slice(5)
const readers = only.length > 0 ? only : Object.keys(READERS)
// what is loaded with the first text of a reader is not its work
for (const reader of readers) await READERS[reader]!.try(READERS[reader]!.texts[0]!)
const start = performance.now()
let count = 0
for (let number = first; count < most && performance.now() - start < seconds * 1000; number++)
  for (const reader of readers) {
    if (number % READERS[reader]!.every !== 0) continue
    process.stdout.write(`${JSON.stringify({ at: [reader, number] })}\n`)
    const finding = await tried(reader, number)
    if (finding !== null) process.stdout.write(`${JSON.stringify({ finding })}\n`)
    count++
  }
process.stdout.write(`${JSON.stringify({ done: count })}\n`, () => process.exit(0))
