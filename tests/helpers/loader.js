/** Lets Node import TypeScript, as the command does from source; once for each process, which runs many files. */
import { register } from 'node:module'
import { register as registerLoader } from 'tsx/esm/api'

if (globalThis.loopwrightLoader === undefined) {
  globalThis.loopwrightLoader = registerLoader()
  register('./plainNames.js', import.meta.url)
}
