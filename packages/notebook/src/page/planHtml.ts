import { escapeHtml } from './html.ts'

/** Both drawings of a plan; the style sheet shows the one that fits. */
export function planHtml(plan: { readonly wide: string; readonly narrow: string; readonly note: string | null }): string {
  const note = plan.note === null ? '' : `<p class="plannote">${escapeHtml(plan.note)}</p>`
  return `<div class="wide">${plan.wide}</div><div class="narrow">${plan.narrow}</div>${note}`
}
