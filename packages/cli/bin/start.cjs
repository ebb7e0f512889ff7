/**
 * Runs one file of the bundle with the code that an earlier run compiled, which Node keeps for modules of the older kind only. Where there is none, or another
 * Node made it, the file is compiled as ever, and what was compiled is put down for the next run.
 */
const { randomBytes } = require('node:crypto')
const { readFileSync, renameSync, writeFileSync } = require('node:fs')
const { createRequire } = require('node:module')
const { dirname } = require('node:path')
const { Script } = require('node:vm')
const { parentPort } = require('node:worker_threads')

function start(file) {
  const kept = `${file}.${process.version}.cache`
  const cachedData = read(kept)
  // on one line, so that the lines of the file keep their numbers
  const text = `(function (exports, require, module, __filename, __dirname, importOf) { ${readFileSync(file, 'utf8')}\n})`
  const script = new Script(text, { filename: file, ...(cachedData === undefined ? {} : { cachedData }) })
  const module = { exports: {} }
  script.runInThisContext()(module.exports, createRequire(file), module, file, dirname(file), importOf)
  if (cachedData !== undefined && script.cachedDataRejected !== true) return
  const keep = () => write(kept, script.createCachedData())
  if (parentPort === null) process.once('exit', keep)
  else parentPort.once('message', () => parentPort.once('message', keep)) // a line, then the first task, which has been run by then
}

/** Code from a cache cannot import by itself; the names are found from this folder. */
const importOf = (name) => import(name)

function read(file) {
  try {
    return readFileSync(file)
  } catch {
    return undefined
  }
}

/** A folder that may not be written is no failure. */
function write(file, bytes) {
  const part = `${file}.${randomBytes(4).toString('hex')}.part`
  try {
    writeFileSync(part, bytes)
    renameSync(part, file)
  } catch {}
}

module.exports = { start }
