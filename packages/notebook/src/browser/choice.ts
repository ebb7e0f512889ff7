/** Radio groups that choose a view; what is chosen stands in the address, so that a link or a bookmark shows it again. */

type Show = (choice: string, key: string) => void

export function onChoice(show: Show): void {
  for (const group of document.querySelectorAll<HTMLFieldSetElement>('fieldset[data-choice]')) {
    const choice = group.dataset.choice ?? ''
    const status = group.querySelector('[role="status"]')
    const radios = [...group.querySelectorAll<HTMLInputElement>('input')]
    const shown = radios.find(({ defaultChecked }) => defaultChecked)?.value ?? ''
    /** what the address asks for, where there is such a view */
    const asked = (): string | null => {
      const key = wanted(choice)
      return radios.some(({ value }) => value === key) ? key : null
    }
    const tell = (key: string): void => {
      show(choice, key)
      markPicked(choice, key)
    }
    group.addEventListener('change', (event) => {
      const radio = event.target as HTMLInputElement
      if (!radio.checked) return
      tell(radio.value)
      keep(choice, radio.value === shown ? null : radio.value)
      if (status)
        status.textContent = `${group.querySelector('legend')?.textContent ?? ''}: ${radio.labels?.[0]?.textContent ?? radio.value}`
    })
    const choose = (key: string | null): void => {
      const radio = radios.find(({ value }) => value === key)
      if (radio === undefined || radio.checked) return
      radio.checked = true
      radio.dispatchEvent(new Event('change', { bubbles: true }))
    }
    document.addEventListener('click', (event) => {
      const mark = (event.target as Element).closest?.('[data-pick]')
      if (mark?.closest<SVGElement>('[data-choice]')?.dataset.choice === choice) choose(mark.getAttribute('data-pick'))
    })
    // a link to a section leaves what is chosen as it is
    addEventListener('hashchange', () => {
      if (location.hash === '' || location.hash.includes('=')) choose(asked() ?? shown)
    })
    // a reload keeps the browser's own memory of what was checked
    const first = asked() ?? radios.find(({ checked }) => checked)?.value ?? shown
    const radio = radios.find(({ value }) => value === first)
    if (radio !== undefined && first !== shown) {
      radio.checked = true
      tell(first)
    } else markPicked(choice, shown)
  }
}

/** The marks of a chart that stand for what is looked at. */
export function markPicked(choice: string, key: string): void {
  for (const mark of document.querySelectorAll(`[data-choice="${CSS.escape(choice)}"] [data-pick]`))
    mark.classList.toggle('picked', mark.getAttribute('data-pick') === key)
}

/** What the address asks for: "#carriers=12". */
function wanted(choice: string): string | null {
  return new URLSearchParams(location.hash.slice(1)).get(choice)
}

function keep(choice: string, key: string | null): void {
  const kept = new URLSearchParams(location.hash.includes('=') ? location.hash.slice(1) : '')
  if (key === null) kept.delete(choice)
  else kept.set(choice, key)
  const hash = kept.toString()
  history.replaceState(null, '', hash === '' ? location.href.replace(/#.*$/, '') : `#${hash}`)
}
