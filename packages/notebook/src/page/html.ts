/**
 * Text made fit to stand in HTML, between tags or inside quoted attributes.
 *
 * @example escapeHtml('a < "b" & c') // => 'a &lt; &quot;b&quot; &amp; c'
 */
export function escapeHtml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')
}

/**
 * Data as JSON that cannot end the script element it stands in.
 *
 * @example scriptJson(['</script>']) // => '["\\u003c/script>"]'
 */
export function scriptJson(data: unknown): string {
  return JSON.stringify(data).replaceAll('<', '\\u003c').replaceAll('\u2028', '\\u2028').replaceAll('\u2029', '\\u2029')
}
