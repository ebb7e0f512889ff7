import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { foundChromium, printPdf } from './printPdf.ts'

test('the one that is named, else one along the path, else none', () => {
  const folder = mkdtempSync(join(tmpdir(), 'loopwright-print-test-'))
  try {
    expect(foundChromium({ CHROMIUM_PATH: '/here/it/is', PATH: folder })).toBe('/here/it/is')
    const none = foundChromium({ PATH: folder })
    expect(none === null || none.startsWith('/Applications')).toBe(true)
    writeFileSync(join(folder, 'chromium'), '')
    chmodSync(join(folder, 'chromium'), 0o755)
    expect(foundChromium({ PATH: folder })).toBe(join(folder, 'chromium'))
  } finally {
    rmSync(folder, { recursive: true })
  }
})

test('one that does not print is told', async () => {
  await expect(printPdf('/no/such/browser', '<p>', false)).rejects.toThrow('"/no/such/browser" did not print the page')
})
