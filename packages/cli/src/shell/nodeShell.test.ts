import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { nodeShell } from './nodeShell.ts'

let folder = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'loopwright-shell-'))
  await writeFile(join(folder, 'there.txt'), 'old')
  await mkdir(join(folder, 'sub'))
})
afterAll(() => rm(folder, { recursive: true }))
const shell = nodeShell()

describe('writing', () => {
  test('makes folders, replaces what was there, leaves nothing beside it', async () => {
    await shell.writeFile(join(folder, 'a/b/new.txt'), 'new')
    await shell.writeFile(join(folder, 'there.txt'), 'new')
    expect(await readFile(join(folder, 'a/b/new.txt'), 'utf8')).toBe('new')
    expect(await readFile(join(folder, 'there.txt'), 'utf8')).toBe('new')
    expect((await readdir(folder)).sort()).toEqual(['a', 'sub', 'there.txt'])
  })

  test('below a file: says so, and leaves the file', async () => {
    const path = join(folder, 'there.txt/page.html')
    await expect(shell.writeFile(path, 'x')).rejects.toThrow('a part of the path is a file, not a folder')
    await expect(shell.checkWritable(path)).rejects.toMatchObject({ name: 'Failure' })
  })

  test('over a folder: refused before anything is run', async () => {
    await expect(shell.checkWritable(join(folder, 'sub'))).rejects.toMatchObject({ name: 'Misuse' })
    expect(await readdir(join(folder, 'sub'))).toEqual([])
  })

  test('a check leaves nothing', async () => {
    await shell.checkWritable(join(folder, 'sub/page.html'))
    expect(await readdir(join(folder, 'sub'))).toEqual([])
  })
})

describe('reading', () => {
  test('a file that is not there, or is a folder', async () => {
    await expect(shell.readFile(join(folder, 'no.yaml'))).rejects.toMatchObject({
      name: 'Misuse',
      message: expect.stringContaining('there is no file'),
    })
    await expect(shell.readFile(folder)).rejects.toMatchObject({ name: 'Misuse', message: expect.stringContaining('is a folder') })
  })

  test('a file that a scenario names is looked for beside the scenario', () => {
    expect(shell.readBeside(join(folder, 'line.yaml'), 'there.txt')).toBe('new')
    expect(shell.readBeside(join(folder, 'sub/line.yaml'), 'there.txt')).toBeNull()
  })
})
