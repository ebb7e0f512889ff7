import type { PageData } from '../page/pageData.ts'

/**
 * The page's data: JSON, deflated, in base 64.
 *
 * @throws Error  if the browser cannot unpack it, or it is damaged
 */
export async function readData(): Promise<PageData> {
  const packed = document.getElementById('page-data')?.textContent ?? ''
  const bytes = Uint8Array.from(atob(packed.trim()), (character) => character.charCodeAt(0))
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'))
  return JSON.parse(await new Response(stream).text()) as PageData
}
