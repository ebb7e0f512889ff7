/** On paper every table is open; afterwards the reader finds the page as it was. */
export function preparePrint(): void {
  let opened: HTMLDetailsElement[] = []
  addEventListener('beforeprint', () => {
    opened = [...document.querySelectorAll<HTMLDetailsElement>('details:not([open])')]
    for (const details of opened) details.open = true
  })
  addEventListener('afterprint', () => {
    for (const details of opened) details.open = false
    opened = []
  })
}
