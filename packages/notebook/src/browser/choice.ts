/** Radio groups that choose a view. A reload keeps the browser's own memory of them, so the first state is told as well. */
export function onChoice(show: (choice: string, key: string) => void): void {
  for (const group of document.querySelectorAll<HTMLFieldSetElement>('fieldset[data-choice]')) {
    const choice = group.dataset.choice ?? ''
    const status = group.querySelector('[role="status"]')
    group.addEventListener('change', (event) => {
      const radio = event.target as HTMLInputElement
      if (!radio.checked) return
      show(choice, radio.value)
      if (status)
        status.textContent = `${group.querySelector('legend')?.textContent ?? ''}: ${radio.labels?.[0]?.textContent?.trim() ?? radio.value}`
    })
    const checked = group.querySelector<HTMLInputElement>('input:checked')
    if (checked && !checked.defaultChecked) show(choice, checked.value)
  }
}
