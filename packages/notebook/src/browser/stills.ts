/** Where drawing fails, the pictures for readers without scripts take its place. */
export function showStills(): void {
  document.documentElement.classList.remove('script')
  for (const place of document.querySelectorAll('.picture.waiting:not(.drawn)')) {
    const still = place.nextElementSibling
    if (still?.localName === 'noscript') still.outerHTML = still.textContent ?? ''
  }
  document.documentElement.dataset.drawn = 'stills'
}
