/** What stands on every page of a screening, word by word. */

/** Stands on every page of a screening. */
export const SCREENING_CAUTION = `Screening only. This figure compares your inputs with published guidance to show where a closer look is needed. It is not a risk assessment and not a statement of compliance. Local codes, the current edition of the standard, and a qualified (where required, licensed) professional decide. Validate stop times and forces by measurement on the machine.`

/** Where to look first, in the current edition. */
export const STANDARDS_TO_OPEN: readonly string[] = [
  'EN 619',
  'ASME B20.1',
  '29 CFR 1926.555 (audible warning before start)',
  '29 CFR 1910.147 (lock-out, from memory)',
  'ISO 12100',
  'ISO 13849-1',
  'IEC 62061',
  'IEC 60204-1',
  'ISO 13850',
  'ISO 14119',
  'IEC 62046',
  'ISO 13857',
  'ISO 13854',
  'ISO 13855',
]

/** In this order (ISO 12100, from memory). */
export const RISK_REDUCTION: readonly string[] = [
  'design: take the hazard away, such as a gap that is wide enough, a lower speed, a lighter carrier',
  'guards and protective devices: fixed guards, light curtains, scanners, with their distance from the hazard',
  'information: signs, training, work instructions, personal protective equipment',
]

/** What 24 V does and does not do. */
export const LOW_VOLTAGE = 'Low voltage (24 V DC) removes shock, not pinch, entanglement or falling loads.'
