/** Sixty damaged tables of times, each as somebody has sent one, with the only times in seconds that may be read of it. All numbers are invented. */
import { type WorkbookParts, workbookBytes } from '../helpers/workbook.ts'

export interface DamagedTable {
  readonly name: string
  readonly bytes: Uint8Array
  /** times that may be read, seconds; whatever else would be a wrong number */
  readonly may: readonly number[]
  /** what is told: part of the error, or of what was refused, guessed or noted */
  readonly tells: RegExp
}

const text = (value: string): Uint8Array => new TextEncoder().encode(value)
const csv = (name: string, value: string, may: readonly number[], tells: RegExp): DamagedTable => ({
  name: `csv: ${name}`,
  bytes: text(value),
  may,
  tells,
})
const book = (name: string, parts: WorkbookParts, may: readonly number[], tells: RegExp): DamagedTable => ({
  name: `xlsx: ${name}`,
  bytes: workbookBytes(parts),
  may,
  tells,
})

const TIMES = [45, 47, 44, 46]
const ROWS = TIMES.map((seconds) => `wire,${seconds}`).join('\n')
const HEAD = 'task,seconds'
const CELLS: WorkbookParts['rows'] = [['task', 'seconds'], ...TIMES.map((seconds) => ['wire', seconds])]
const time = (seconds: number, style = 1) => ({ style, inside: `<v>${seconds / 86_400}</v>` })

export const DAMAGED: readonly DamagedTable[] = [
  csv('nothing in it', '', [], /the file is empty/),
  csv('blanks alone', ' \n\n \n', [], /the file is empty/),
  csv('heads alone', `${HEAD}\n`, [], /no row stands below the heads/),
  csv('no heads', ROWS, [], /line 1: no row names the columns/),
  csv('a title above', `Line 3, wiring\n${HEAD}\n${ROWS}`, TIMES, /line 1: it stands above the heads/),
  csv('two rows of heads', `task,time\n,(min)\n${TIMES.map((seconds) => `wire,${seconds / 60}`).join('\n')}`, TIMES, /2 rows of heads/),
  csv('heads again in the middle', `${HEAD}\nwire,45\n${HEAD}\nwire,47`, TIMES, /line 3: the heads come again/),
  csv('a total row', `${HEAD}\n${ROWS}\nTotal,182`, TIMES, /line 6: "Total"/),
  csv(
    'a mean without a word',
    `${HEAD}\nwire,45.2\nwire,47.1\nwire,44.9\nwire,${137.2 / 3}`,
    [45.2, 47.1, 44.9],
    /mean of the times above/,
  ),
  csv('a sum without a word', `${HEAD}\n${ROWS}\nwire,182`, TIMES, /line 6.*sum of the times above/),
  csv(
    'sums in a column of their own',
    'cycle,a (s),b (s),both (s)\n1,10,20,30\n2,11,21,32\n3,12,22,34',
    [10, 11, 12, 20, 21, 22],
    /its column is the sum of the others/,
  ),
  csv('average, min and max below', `${HEAD}\n${ROWS}\nAverage,45.5\nMin,44\nMax,47`, TIMES, /line 7: "Min"/),
  csv('blank rows', `${HEAD}\n\nwire,45\n,\nwire,47`, TIMES, /2 refused/),
  csv('an empty column', `task,,seconds\n${TIMES.map((seconds) => `wire,,${seconds}`).join('\n')}`, TIMES, /4 read \+ 0 refused/),
  csv('two columns of one name', 'task,seconds,seconds\nwire,45,47', [], /2 columns could be the time/),
  csv('text among numbers', `${HEAD}\nwire,45\nwire,about 50\nwire,47`, TIMES, /line 3, column 2.*"about 50" is no time/),
  csv('a range', `${HEAD}\nwire,45\nwire,44-47`, TIMES, /"44-47" is no time/),
  csv('a question mark', `${HEAD}\nwire,45\nwire,47?`, TIMES, /"47\?" is no time/),
  csv('units in the cells', 'task,time\nwire,45 s\nwire,0.75 min\nwire,47', [45, 47], /taken as seconds|read/),
  csv('a unit that nobody knows', `${HEAD}\nwire,45\nwire,47 parsec`, TIMES, /"47 parsec" is no time/),
  csv('minutes without a word', 'task,time\nwire,0.75\nwire,0.8', [], /may be seconds or minutes/),
  csv('decimal commas between commas', `${HEAD}\nwire,45,2\nwire,47,1`, [], /3 cells under 2 heads; decimal commas/),
  csv('decimal commas and points mixed', 'task;seconds\nwire;45,5\nwire;47.5\nwire;1.234', [45.5, 47.5], /may have decimals or thousands/),
  csv('thousands or decimals', 'task;seconds\nwire;1.234\nwire;1.301', [], /may have decimals or thousands/),
  csv('a minus', `${HEAD}\nwire,45\nwire,-47`, [45], /"-47" is no time above 0/),
  csv('a nought', `${HEAD}\nwire,45\nwire,0`, [45], /"0" is no time above 0/),
  csv('a day long', `${HEAD}\nwire,45\nwire,99999`, [45], /more than a day/),
  csv('infinity', `${HEAD}\nwire,45\nwire,Infinity\nwire,1e999`, [45], /"Infinity" is no time/),
  csv('hexadecimal', `${HEAD}\nwire,45\nwire,0x2F`, [45], /"0x2F" is no time/),
  csv('a quote that never closes', `${HEAD}\nwire,45\n"wire,47\nwire,44`, [], /line 3: a quote opens here and never closes/),
  csv('a quote that closes too late', `${HEAD}\nwire,45\n"wire,47\nwire,44\nwire,46\nwire",46\nwire,45`, [45], /closes too late/),
  csv('text behind a quote', `${HEAD}\n"wire"x,45\nwire,47`, TIMES, /line 2|closing quote|2 read/),
  csv('cells merged in the spreadsheet', 'task,seconds\nwire,45\n,47\n,44', [45], /names no task \(of merged cells/),
  csv('a spreadsheet error', `${HEAD}\nwire,45\nwire,#DIV/0!`, [45], /"#DIV\/0!" is no time/),
  csv('a formula as a time', `${HEAD}\nwire,45\nwire,=45+2`, [45], /formula, and nothing is computed/),
  csv('a formula as a name', `${HEAD}\nwire,45\n=HYPERLINK(0),47`, [45], /formula, and nothing is computed/),
  csv('a command as a name', `${HEAD}\nwire,45\n@SUM(A1),47`, [45], /formula, and nothing is computed/),
  csv('rows with more cells than heads', `${HEAD}\nwire,45\nwire,47,late`, [45], /3 cells under 2 heads/),
  csv('rows with fewer cells', `${HEAD}\nwire,45\nwire`, [45], /line 3.*it is empty/),
  csv('clock times of a wrong kind', 'task,time\nwire,0:45\nwire,1:75', [45], /"1:75" is no time/),
  csv(
    'end before start',
    'task,start,end\nwire,2026-11-03 06:10:00,2026-11-03 06:10:45\nwire,2026-11-03 06:12:00,2026-11-03 06:11:00',
    [45],
    /ends before it starts/,
  ),
  csv('days that may be months', 'task,start,end\nwire,03/11/2026 06:10:00,03/11/2026 06:10:45', [], /day or the month may come first/),
  csv(
    'days of both orders',
    'task,start,end\nwire,25/11/2026 06:10:00,25/11/2026 06:10:45\nwire,11/25/2026 06:10:00,11/25/2026 06:10:47',
    [],
    /only be day first and some only month first/,
  ),
  csv(
    'no such day',
    'task,start,end\nwire,2026-11-03 06:10:00,2026-11-03 06:10:45\nwire,2026-02-30 06:10:00,2026-02-30 06:10:47',
    [45],
    /there is no day/,
  ),
  csv('ratings that cannot be', 'task,seconds,rating\nwire,45,100\nwire,47,1000', [45], /is no rating/),
  csv('binary', `${HEAD}\nwire,45\n\0\0`, [], /line 3: it is no text/),
  { name: 'an old workbook', bytes: Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1]), may: [], tells: /old workbook/ },
  { name: 'a PDF', bytes: text('%PDF-1.7\n'), may: [], tells: /a PDF file/ },
  { name: 'a hundred megabytes', bytes: new Uint8Array(100 * 2 ** 20), may: [], tells: /it has 100 MB; tables of up to 20 MB are read/ },
  { name: 'a workbook cut off', bytes: workbookBytes({ rows: CELLS }).slice(0, 400), may: [], tells: /it cannot be unpacked/ },
  book(
    'tasks in merged cells',
    {
      rows: [
        ['task', 'seconds'],
        ['wire', 45],
        [null, 47],
      ],
      merges: ['A2:A3'],
    },
    TIMES,
    /merged with/,
  ),
  book(
    'times in merged cells',
    {
      rows: [
        ['task', 'seconds'],
        ['wire', 45],
        ['wire', null],
      ],
      merges: ['B2:B3'],
    },
    [45],
    /cell B3.*it is empty/,
  ),
  book('a title in merged cells', { rows: [['Wiring', null], ...CELLS], merges: ['A1:B1'] }, TIMES, /it stands above the heads/),
  book('a total by formula', { rows: [...CELLS, ['Total', { inside: '<f>SUM(B2:B5)</f><v>182</v>' }]] }, TIMES, /row 6: "Total"/),
  book(
    'a total by formula without a word',
    { rows: [...CELLS, ['wire', { inside: '<f>SUM(B2:B5)</f><v>182</v>' }]] },
    TIMES,
    /sum of the times above/,
  ),
  book(
    'errors of the spreadsheet',
    { rows: [...CELLS, ['wire', { type: 'e', inside: '<v>#REF!</v>' }]] },
    TIMES,
    /cell B6.*error there \(#REF!\)/,
  ),
  book(
    'hours for minutes',
    {
      rows: [
        ['task', 'time'],
        ['wire', time(3900)],
      ],
      formats: ['h:mm'],
    },
    [],
    /holds it as 1 h 5 min/,
  ),
  book(
    'days for times',
    { rows: [...CELLS, ['wire', time(86_400 * 46_329 + 45)]], formats: ['yyyy-mm-dd hh:mm'] },
    TIMES,
    /is a day with its time/,
  ),
  book(
    'dates from 1904',
    {
      rows: [
        ['task', 'start', 'end'],
        ['wire', time(86_400 * 44_867 + 3600), time(86_400 * 44_867 + 3645)],
      ],
      formats: ['yyyy-mm-dd hh:mm:ss'],
      date1904: true,
    },
    [45],
    /dates count from 1904/,
  ),
  book(
    'hidden rows and other sheets',
    { rows: CELLS, hidden: [3], more: { Old: [['x']] } },
    TIMES,
    /hidden in it.*|not read: the sheet "Old"/,
  ),
]
