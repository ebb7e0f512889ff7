/**
 * Runs one file of the bundle with the code that an earlier run compiled. Node keeps it from version 22.1 on; for older ones it is kept here, beside the file.
 * Both judge what they find by a checksum of it and of the text that it was made of: V8 itself looks at neither, and one wrong bit would change a number or end
 * every start. Where nothing whole is found the file is compiled as ever, and what was compiled is put down for the next run.
 */
const { isAscii } = require('node:buffer')
const { createHash, randomBytes } = require('node:crypto')
const { readFileSync, renameSync, writeFileSync } = require('node:fs')
const { createRequire, enableCompileCache } = require('node:module')
const { dirname, join } = require('node:path')
const { Script } = require('node:vm')
const { parentPort } = require('node:worker_threads')

exports.start = (file) => {
  if (enableCompileCache === undefined) return startOlder(file)
  enableCompileCache(join(dirname(file), 'compiled'))
  require(file)
}

function startOlder(file) {
  const kept = `${file}.${process.version}.cache`
  const bytes = readFileSync(file)
  const cachedData = read(kept, bytes)
  // on one line, so that the lines of the file keep their numbers
  const text = `(function (exports, require, module, __filename, __dirname) { ${bytes.toString(isAscii(bytes) ? 'latin1' : 'utf8')}\n})`
  const script = new Script(text, { filename: file, ...(cachedData === undefined ? {} : { cachedData }) })
  const module = { exports: {} }
  script.runInThisContext()(module.exports, createRequire(file), module, file, dirname(file))
  if (cachedData !== undefined && script.cachedDataRejected !== true) return
  const keep = () => write(kept, bytes, script.createCachedData())
  if (parentPort === null) process.once('exit', keep)
  else parentPort.once('message', () => parentPort.once('message', keep)) // a line, then the first task, which has been run by then
}

/** Code that was kept here cannot import by itself; the names are found from this folder. */
exports.importOf = (name) => import(name)

const checksum = (bytes, code) => createHash('sha256').update(bytes).update(code).digest()
const CHECKSUM_BYTES = 32

/** What was kept for these bytes of text; undefined where there is none, or a byte of it is not as it was written. */
function read(file, bytes) {
  try {
    const kept = readFileSync(file)
    const code = kept.subarray(CHECKSUM_BYTES)
    return checksum(bytes, code).equals(kept.subarray(0, CHECKSUM_BYTES)) ? code : undefined
  } catch {
    return undefined
  }
}

/** A folder that may not be written is no failure. */
function write(file, bytes, code) {
  const part = `${file}.${randomBytes(4).toString('hex')}.part`
  try {
    writeFileSync(part, Buffer.concat([checksum(bytes, code), code]))
    renameSync(part, file)
  } catch {}
}
