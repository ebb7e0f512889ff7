/** What a reader may take out of the page; shown where scripts run, and wired by `browser/save.ts`. */

const button = (as: string, name: string, label: string): string =>
  `<button type="button" data-as="${as}" aria-label="${name}">${label}</button>`

const line = (buttons: readonly string[]): string => `<p class="saves">${buttons.join(' ')} <span role="status"></span></p>`

/** Of a figure. */
export function figureSavesHtml(): string {
  return line([
    button('svg', 'Save this figure as SVG', 'SVG'),
    button('png', 'Save this figure as PNG', 'PNG'),
    button('csv', 'Save these numbers as CSV', 'CSV'),
    button('finding', 'Copy sentence, with its number', 'Copy sentence'),
  ])
}

/** Of the answer. */
export function answerSavesHtml(): string {
  return line([button('answer', 'Copy answer, with its number', 'Copy answer')])
}
