/** Lets Node import TypeScript, as the command does from source; once for each process, which runs many files. */
import { register } from 'tsx/esm/api'

globalThis.loopwrightLoader ??= register()
