import type { PageData } from '../page/pageData.ts'

/**
 * The page's data.
 *
 * @throws Error  if the browser cannot unpack it, or it is damaged
 */
export async function readData(): Promise<PageData> {
  return JSON.parse(await unpacked('page-data')) as PageData
}

/**
 * A text that the page carries: deflated, in base 64.
 *
 * @param id  of the element that it stands in
 * @throws Error  if the browser cannot unpack it, or it is damaged
 */
export async function unpacked(id: string): Promise<string> {
  const packed = document.getElementById(id)?.textContent ?? ''
  const bytes = Uint8Array.from(atob(packed.trim()), (character) => character.charCodeAt(0))
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'))
  return await new Response(stream).text()
}
