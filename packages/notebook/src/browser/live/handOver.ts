/** Texts that leave the page by the reader's own hand. */

/** To the clipboard; where there is none, selected for the reader to copy. Says which. */
export function copyText(text: string, says: HTMLElement): void {
  const field = Object.assign(document.createElement('textarea'), { value: text, className: 'hidden' })
  const byHand = (): void => {
    document.body.append(field)
    field.select()
    says.textContent = document.execCommand('copy') ? 'Copied.' : 'Copying is not allowed here: select the text and copy it.'
    field.remove()
  }
  if (navigator.clipboard === undefined) byHand()
  else
    navigator.clipboard.writeText(text).then(() => {
      says.textContent = 'Copied.'
    }, byHand)
}

/** As a file that the browser saves. */
export function saveText(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/yaml' }))
  Object.assign(document.createElement('a'), { href: address, download: name }).click()
  setTimeout(() => URL.revokeObjectURL(address), 1000)
}
