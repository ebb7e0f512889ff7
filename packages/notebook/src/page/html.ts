/**
 * Text made fit to stand in HTML, between tags or inside quoted attributes.
 *
 * @example escapeHtml('a < "b" & c') // => 'a &lt; &quot;b&quot; &amp; c'
 */
export function escapeHtml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')
}
