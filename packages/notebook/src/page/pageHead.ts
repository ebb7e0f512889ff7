/** What stands at the head and the foot of a page. */
export interface PageHead {
  /** the question: the page's heading */
  readonly question: string
  readonly scenarioName: string
  readonly date: Date
  /** repeats what made the page */
  readonly command: string
}
