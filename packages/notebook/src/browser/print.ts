/** pixels; what both A4 and Letter can hold at full size */
const PAPER_WIDTH = 640

/** On paper everything is unfolded and every chart of one's own as wide as the paper; afterwards the reader finds the page as it was. */
export function preparePrint(setWidth: (pixels: number | null) => void): void {
  let opened: HTMLDetailsElement[] = []
  addEventListener('beforeprint', () => {
    opened = [...document.querySelectorAll<HTMLDetailsElement>('details:not([open])')]
    for (const details of opened) details.open = true
    setWidth(PAPER_WIDTH)
  })
  addEventListener('afterprint', () => {
    for (const details of opened) details.open = false
    opened = []
    setWidth(null)
  })
}
