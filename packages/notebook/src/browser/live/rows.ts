/** The rows of controls: a slider and its field say the same value. */
import type { LiveInput } from '../../live/liveInput.ts'

export interface Row {
  readonly input: LiveInput
  /** what stands in the field */
  readonly text: () => string
  readonly set: (text: string) => void
  /** the same, as if a person had done it */
  readonly choose: (text: string) => void
  /** said beside the value of the file */
  readonly note: (text: string) => void
  /** shown as changed */
  readonly mark: (changed: boolean) => void
  /** its value cannot be simulated */
  readonly fault: () => void
}

/** @param onChange  after what a person has done */
export function rowsOf(place: HTMLElement, inputs: readonly LiveInput[], onChange: () => void): Row[] {
  return inputs.flatMap((input) => {
    const holder = place.querySelector<HTMLElement>(`.liverow[data-key="${CSS.escape(input.key)}"]`)
    return holder === null ? [] : [rowOf(holder, input, onChange)]
  })
}

function rowOf(holder: HTMLElement, input: LiveInput, onChange: () => void): Row {
  const field = holder.querySelector<HTMLInputElement | HTMLSelectElement>('select, input[type="text"]')!
  const slider = holder.querySelector<HTMLInputElement>('input[type="range"]')
  const follow = (): void => {
    const number = Number.parseFloat(field.value)
    if (slider === null || !Number.isFinite(number)) return
    slider.value = String(number)
    slider.setAttribute('aria-valuetext', field.value)
  }
  slider?.addEventListener('input', () => {
    if (input.shown.kind !== 'range') return
    // the place of the file's own value is that value, which may lie between two steps
    const own = Number.parseFloat(input.file)
    const isOwn = Math.abs(Number(slider.value) - own) < input.shown.step / 2
    field.value = isOwn ? input.file : `${slider.value}${input.shown.unit === '' ? '' : ` ${input.shown.unit}`}`
    slider.setAttribute('aria-valuetext', field.value)
    onChange()
  })
  field.addEventListener('change', () => {
    field.value = completed(field.value, input)
    follow()
    onChange()
  })
  const set = (text: string): void => {
    field.value = text
    follow()
  }
  return {
    input,
    text: () => field.value.trim(),
    set,
    choose: (text) => {
      set(text)
      onChange()
    },
    note: (text) => {
      holder.querySelector('.livewas')!.textContent += `, ${text}`
    },
    mark: (changed) => {
      holder.classList.toggle('changed', changed)
      field.removeAttribute('aria-invalid')
      const details = holder.closest('details')
      const count = details?.querySelectorAll('.liverow.changed').length ?? 0
      const shown = details?.querySelector('.livecount')
      if (shown) shown.textContent = count === 0 ? '' : ` · ${count} changed`
    },
    fault: () => field.setAttribute('aria-invalid', 'true'),
  }
}

/** A bare number in a field gets the unit that stands in it. */
function completed(text: string, { shown }: LiveInput): string {
  const bare = /^\s*\d+(?:\.\d+)?\s*$/.test(text)
  return bare && shown.kind === 'range' && shown.unit !== '' ? `${text.trim()} ${shown.unit}` : text
}
