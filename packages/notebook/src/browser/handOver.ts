/** What leaves the page by the reader's own hand. */

/** Copies a text; where the page may not write to the clipboard, by the older command. Gives what to say of it. */
export async function copyText(text: string): Promise<string> {
  const copied =
    navigator.clipboard !== undefined &&
    (await navigator.clipboard.writeText(text).then(
      () => true,
      () => false,
    ))
  return copied || copiedByCommand(text) ? 'Copied.' : 'Copying is not allowed here: select the text and copy it.'
}

function copiedByCommand(text: string): boolean {
  const field = Object.assign(document.createElement('textarea'), { value: text, className: 'hidden' })
  document.body.append(field)
  field.select()
  const done = document.execCommand('copy')
  field.remove()
  return done
}

/** As a file that the browser saves. */
export function saveFile(name: string, content: Blob): void {
  const address = URL.createObjectURL(content)
  Object.assign(document.createElement('a'), { href: address, download: name }).click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}
