/** The window around a page that is being written: the page as it will be sent on, in a frame, and a line that says how its parts stand. */
import { escapeHtml } from '../page/html.ts'

const STYLE = `
:root { color-scheme: light dark; font: 14px/1.4 system-ui, sans-serif; --bar: #f3f4f6; --ink: #1f2430; --rule: #c9cdd6; --bad: #a3182b; --warn: #7a4b00; --good: #1d6b3a; --run: #1b5fa8; }
@media (prefers-color-scheme: dark) { :root { --bar: #1c2028; --ink: #e6e8ee; --rule: #3a404d; --bad: #ff9aa5; --warn: #f0c069; --good: #8fd3a5; --run: #8fc1f5; } }
html, body { margin: 0; height: 100%; }
body { display: flex; flex-direction: column; background: Canvas; color: var(--ink); }
#frames { position: relative; flex: 1 1 auto; min-height: 0; }
#frames iframe { position: absolute; inset: 0; width: 100%; height: 100%; border: 0; background: Canvas; }
#frames iframe.next { visibility: hidden; }
footer { flex: none; max-height: 45%; overflow: auto; background: var(--bar); border-top: 1px solid var(--rule); padding: 0.35rem 0.75rem; }
#note { margin: 0; }
#note::before { content: '● '; color: var(--good); }
footer[data-state="running"] #note::before { content: '◐ '; color: var(--run); }
footer[data-state="failed"] #note::before { content: '▲ '; color: var(--bad); }
footer[data-state="gone"] #note::before { content: '○ '; color: var(--warn); }
#fault { margin: 0.4rem 0 0; white-space: pre-wrap; font: 13px/1.4 ui-monospace, monospace; color: var(--bad); }
#fault:empty { display: none; }
summary { cursor: pointer; }
#parts { margin: 0.3rem 0 0; padding: 0; list-style: none; display: flex; flex-wrap: wrap; gap: 0.25rem; }
#parts button { font: inherit; color: inherit; background: Canvas; border: 1px solid var(--rule); border-radius: 3px; padding: 0 0.4rem; cursor: pointer; }
#parts [data-state="running"] { border-color: var(--run); }
#parts [data-state="failed"] { border-color: var(--bad); color: var(--bad); }
#parts [data-state="waiting"], #parts [data-state="stale"] { border-style: dashed; color: var(--warn); }
`

/**
 * The window, and the policy that it is served with.
 *
 * @param script  of the window
 * @param hash    SHA-256 of a text in base 64
 */
export function windowHtml(
  title: string,
  script: string,
  hash: (text: string) => string,
): { readonly html: string; readonly policy: string } {
  const policy = `default-src 'none'; script-src 'sha256-${hash(script)}'; style-src 'sha256-${hash(STYLE)}'; connect-src 'self'; frame-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`
  return {
    policy,
    html: `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escapeHtml(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<main id="frames" aria-label="Page"></main>
<footer data-state="running" aria-label="How the notebook stands">
<p id="note" role="status">Starting</p>
<pre id="fault" role="alert"></pre>
<details id="all"><summary>Parts</summary><ol id="parts"></ol></details>
</footer>
<script>${script}</script>
</body>
</html>
`,
  }
}
