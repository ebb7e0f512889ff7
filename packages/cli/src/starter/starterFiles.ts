/** What a new folder begins with: a small line that runs, a study of it, what teaches an editor both, ten lines of README. */
import type { TypesPlace } from '../shell/shell.ts'

export interface StarterFile {
  readonly name: string
  readonly text: string
}

const SCENARIO = `# yaml-language-server: $schema=scenario.schema.json
# Each value has its unit; \`loopwright check line.yaml\` says what was understood of it.
format: 1
question: How many carriers does the line need to make 400 units a shift?
name: New line
plan: 400 per shift

calendar:
  shift: { from: "06:00", to: "14:00", perDay: 2 }
  breaks: [{ after: 4 h, lasts: 30 min }]
  conveyorDuringBreaks: true
  judge: second shift                     # the first one fills the line

drive: { speed: 12 m/min, acceleration: 0.5 m/s², reaction: 0.2 s }
carriers: { count: 7, length: 0.9 m }
loop: 14 zones of 1.2 m                   # Z01 … Z14 in travel order

stations:
  S1: { name: Load, zone: Z02, load: { place: 30 s ± 10 % } }
  S2: { name: Assembly, zone: Z05, work: { fit: 48 s ± 15 % } }
  S3: { name: Test, zone: Z09, work: { test: 52 s ± 5 % } }
  S4: { name: Unload, zone: Z12, unload: { takeOff: 28 s ± 10 % } }

stops:
  tester: { title: Tester fault, at: S3, after: exponential 2 h, lasts: lognormal 4 min ± 60 % }

variations:
  quicker test: { stations.S3.work.test: 46 s ± 5 % }
`

const STUDY = `/** How many carriers does the new line need, and what does a quicker test bring? */
import { notebook } from '@loopwright/notebook'

export default notebook(
  { title: 'New line', scenario: 'line.yaml' },
  async ({ scenario, sweep, compare, story, show, prose, chart, input }) => {
    input('carriers', { from: 3, to: 12, step: 1 })
    const counts = await sweep({ carriers: { from: 4, to: 11 }, replications: 40 })
    const tale = story(counts)
    show(tale.answer, ...tale.warnings, tale.throughput, tale.sure)

    const today = scenario.line.carriers.count
    const lines = {
      'as it is': scenario,
      'a quicker test': scenario.with({ 'stations.S3.work.test': '46 s ± 5 %' }),
      'two carriers more': scenario.with({ 'carriers.count': today + 2 }),
    }
    const compared = await compare(lines, { replications: 40 })
    prose(\`
    ## What would help
    Each line ran over the same \${compared.replications} simulated shifts.
  \`)
    const told = story(compared)
    show({ ...told.answer, id: 'what-helps' }, ...told.warnings, told.table)

    const rows = compared.lines.map(({ name, units }) => ({
      line: name,
      units: units.reduce((sum, each) => sum + each, 0) / units.length,
    }))
    chart({ x: 'line', y: 'units', rows, yTitle: 'Units per shift', finding: 'Mean units per shift of each line.' })

    show(...tale.assumptions, ...tale.cautions)
  },
)
`

const README = `# A line of your own

- \`line.yaml\` is the line: zones, stations, times, stops. An editor that reads \`scenario.schema.json\` says what may stand where.
- \`study.ts\` is a study of it, as a short program. \`tsconfig.json\` tells an editor what it may ask.

\`loopwright check line.yaml\` says what was understood and what limits the line; \`loopwright carriers line.yaml\` how many carriers it needs.
\`loopwright notebook study.ts --watch --open\` shows the study while you write it; Ctrl-C ends it. Without \`--watch\` it writes \`out/study.html\`, one file to send on.
Where no \`loopwright\` is found, it is \`npx loopwright\`, in the folder in which npm put it, or below.

Results are estimates for planning. Local codes and licensed practice decide on hazards.
`

/** What an editor needs to know of the study. Where the packages are not found by name, it is told where those lie that made the folder. */
function editorSettings(types: TypesPlace | null): object {
  return {
    compilerOptions: {
      target: 'ES2023',
      module: 'ESNext',
      moduleResolution: 'Bundler',
      allowImportingTsExtensions: true,
      strict: true,
      skipLibCheck: true,
      noEmit: true,
      types: [],
      ...(types === null ? {} : { paths: { '@loopwright/*': [types.pattern] } }),
      ...(types?.source === true ? { customConditions: ['loopwright-source'] } : {}),
    },
    include: ['*.ts'],
  }
}

/**
 * @param schema  of scenario files
 * @param types   where an editor finds the types of the packages; null: by their names
 */
export function starterFiles(schema: object, types: TypesPlace | null): StarterFile[] {
  return [
    { name: 'line.yaml', text: SCENARIO },
    { name: 'study.ts', text: STUDY },
    { name: 'tsconfig.json', text: `${JSON.stringify(editorSettings(types), null, 2)}\n` },
    { name: 'scenario.schema.json', text: `${JSON.stringify(schema, null, 2)}\n` },
    { name: 'README.md', text: README },
  ]
}
