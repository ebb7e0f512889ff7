/** A decision file that is right for any scenario with a plan and a calendar. */

/** Two alternatives of one scenario, with all that can be asked of them. */
export const decisionOf = (scenario: string): string =>
  [
    `format: 1\nscenario: ${scenario}\ntoday: slow\nalternatives: { slow: { set: { drive.speed: 9 m/min } }, fast: { investment: 1000 € } }`,
    'money: { wage: 38 €/h, crew: 8, daysPerYear: 230, shiftsPerDay: 2, years: 7, interest: 10 % }',
    'screening: { mass: 115 kg, people: working, voltage: 24 V }',
    'criteria: { mustHaves: { makes it: { planMetIn: 0 % } }, weigh: { output: { weight: 100, from: output, one: 1, five: 100 } } }',
    'acceptance: { lasts: 1 h, looks: 20 min }',
    'promise: { shiftsPerDay: 2, until: nothing changes, learning: { rate: 85 %, standardAfter: 200, weeks: 2 } }',
  ].join('\n')
