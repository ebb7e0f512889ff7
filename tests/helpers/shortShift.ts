/**
 * The text of the demo line, or of another line of its decision, in shifts of two hours: its windows cost a fifth.
 *
 * @throws Error  where it has another calendar than this looks for
 */
export function shortShift(text: string): string {
  const short = text.replace(/shift: \{ from: "06:00", .*\n.*breaks: .*/, 'shift: { from: "06:00", to: "08:00", perDay: 2 }')
  if (short === text) throw new Error('this line has another calendar than this looks for')
  return short.replace('plan: 320 per shift', 'plan: 76 per shift')
}
