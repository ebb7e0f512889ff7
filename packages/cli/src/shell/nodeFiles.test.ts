import { spawnSync } from 'node:child_process'
import { chmod, mkdir, mkdtemp, readdir, readFile, rm, stat, symlink, truncate, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { checkWritable, readBeside, readWhole, writeWhole } from './nodeFiles.ts'

let folder = ''
const at = (name: string): string => join(folder, name)
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'loopwright-files-'))
  await mkdir(at('home'))
  await mkdir(at('elsewhere'))
  await writeFile(at('elsewhere/secret.csv'), 's\n1\n')
  await writeFile(at('home/times.csv'), 's\n2\n')
  await symlink(at('elsewhere/secret.csv'), at('home/link.csv'))
  await writeFile(at('home/large.csv'), '')
  await truncate(at('home/large.csv'), 51 * 2 ** 20)
  spawnSync('mkfifo', [at('home/pipe.csv')])
})
afterAll(() => rm(folder, { recursive: true }))

describe('letters', () => {
  test('UTF-16 by its mark, and a mark of UTF-8 stays', async () => {
    await writeFile(at('wide.yaml'), `\ufeff45 s ± 10 %`, 'utf16le')
    expect(await readWhole(at('wide.yaml'))).toBe('45 s ± 10 %')
    await writeFile(at('marked.yaml'), '\ufeffa')
    expect(await readWhole(at('marked.yaml'))).toBe('\ufeffa')
  })

  test('another encoding is refused with its line, and read as tables are where a scenario names it', async () => {
    await writeFile(at('home/west.yaml'), 'name: Rückwand\nwork: 45 s ± 10 %\n', 'latin1')
    await expect(readWhole(at('home/west.yaml'))).rejects.toMatchObject({
      name: 'Misuse',
      message: expect.stringMatching(/is not written in UTF-8: line 1 holds .*; save it anew, with the encoding UTF-8$/),
    })
    await writeFile(at('home/late.yaml'), 'name: a\n\nwork: 45 s ± 10 %', 'latin1')
    await expect(readWhole(at('home/late.yaml'))).rejects.toMatchObject({ message: expect.stringContaining('line 3') })
    expect(readBeside(at('home/line.yaml'), 'west.yaml')).toContain('Rückwand')
  })
})

describe('writing', () => {
  test('a file that is there keeps its rights', async () => {
    await writeFile(at('private.html'), 'old')
    await chmod(at('private.html'), 0o600)
    await writeWhole(at('private.html'), 'new')
    expect((await stat(at('private.html'))).mode & 0o777).toBe(0o600)
    expect(await readFile(at('private.html'), 'utf8')).toBe('new')
  })

  test('a link is followed and stays one', async () => {
    await writeFile(at('elsewhere/page.html'), 'old')
    await symlink(at('elsewhere/page.html'), at('page.html'))
    await writeWhole(at('page.html'), 'new')
    expect(await readFile(at('elsewhere/page.html'), 'utf8')).toBe('new')
    expect((await readdir(folder, { withFileTypes: true })).find(({ name }) => name === 'page.html')!.isSymbolicLink()).toBe(true)
  })

  test.each([
    ['/dev/null', 'is a device or a pipe'],
    ['home/pipe.csv', 'is a device or a pipe'],
    ['home', 'is a folder'],
    ['nowhere.html', 'is a link that leads nowhere'],
  ])('%s: refused before anything is run, and when it is written', async (name, why) => {
    await symlink(at('gone/page.html'), at('nowhere.html')).catch(() => {})
    const path = name.startsWith('/') ? name : at(name)
    await expect(checkWritable(path)).rejects.toMatchObject({ name: 'Misuse', message: expect.stringContaining(why) })
    await expect(writeWhole(path, 'x')).rejects.toMatchObject({ name: 'Misuse', message: expect.stringContaining(why) })
    expect((await stat('/dev/null')).isCharacterDevice()).toBe(true)
  })

  // skipped because only Linux has a folder in which no folder can ever be made
  test.skipIf(process.platform !== 'linux')('where no folder can ever be made it ends', async () => {
    await expect(checkWritable('/proc/a/b/page.html')).rejects.toMatchObject({ name: 'Failure' })
    await expect(writeWhole('/proc/a/b/page.html', 'x')).rejects.toThrow('the folder cannot be made there')
  })
})

describe('reading', () => {
  test('a device is no scenario', async () => {
    await expect(readWhole('/dev/zero')).rejects.toMatchObject({ name: 'Misuse', message: expect.stringContaining('is a device') })
  })

  test('a scenario names regular files below its folder, or below that of the command', () => {
    expect(readBeside(at('home/line.yaml'), 'times.csv')).toBe('s\n2\n')
    expect(readBeside(at('line.yaml'), 'home/times.csv')).toBe('s\n2\n')
    expect(readBeside(at('home/line.yaml'), 'none.csv')).toBeNull()
    expect(readBeside(at('home/line.yaml'), join(process.cwd(), 'package.json'))).toContain('loopwright')
  })

  test.each([
    ['../elsewhere/secret.csv', 'outside of its folder'],
    ['link.csv', 'outside of its folder'],
    ['/dev/zero', 'outside of its folder'],
    ['pipe.csv', 'no regular file'],
    ['large.csv', 'has 51 MB'],
  ])('%s: refused', (name, why) => {
    expect(() => readBeside(at('home/line.yaml'), name)).toThrow(why)
  })
})
