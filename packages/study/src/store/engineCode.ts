/** The code that makes the numbers, by a digest of its text. */
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** packages whose code decides what a row holds */
const PACKAGES = ['kernel', 'stats', 'line', 'study']
/** put in when the code is bundled: the digest of these packages as they were written, which a bundle shares with the source that it was made of */
declare const ENGINE_CODE: string | undefined
const CODE = /(?<!\.test|\.d)\.[jt]s$/

let code: string | null = null

/**
 * Of each file its place and its text, in the order of packages and names.
 *
 * @returns 16 hexadecimal digits
 */
export function engineCode(): string {
  code ??= typeof ENGINE_CODE === 'string' ? ENGINE_CODE : codeOfFiles()
  return code
}

function codeOfFiles(): string {
  const hash = createHash('sha256')
  for (const name of PACKAGES) {
    const folder = name === 'study' ? dirname(dirname(fileURLToPath(import.meta.url))) : folderOf(name)
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => CODE.test(file))
    for (const file of files.sort()) hash.update(`${name}/src/${file.replaceAll('\\', '/')}\n`).update(readFileSync(join(folder, file)))
  }
  return hash.digest('hex').slice(0, 16)
}

const folderOf = (name: string): string => dirname(fileURLToPath(import.meta.resolve(`@loopwright/${name}`)))
