/** Four slides of a tale: the answer, its curve, what is lost, what was assumed. */
import type { AnswerCell, Cell } from '../cells/cell.ts'
import { plainText } from '../terminal/plainText.ts'
import { type FigureSvg, figureSvgs } from './figureSvgs.ts'
import { pngOf } from './png.ts'

/** What stands over the slides. */
export interface SlidesHead {
  readonly question: string
  readonly scenarioName: string
  readonly date: Date
}

/** inches */
const PAGE = { width: 13.333, height: 7.5, edge: 0.6 }
const TITLE_HEIGHT = 1.1
const BODY = {
  x: PAGE.edge,
  y: PAGE.edge + TITLE_HEIGHT + 0.2,
  w: PAGE.width - 2 * PAGE.edge,
  h: PAGE.height - 2 * PAGE.edge - TITLE_HEIGHT - 0.4,
}
const INK = '1F2430'
const QUIET = '5A6170'
const FONT = 'Calibri'
const SENTENCES_MAX = 5
const FIGURES_MAX = 4
/** starts of ids; the first that there is tells most */
const LOST = ['losses', 'drivers', 'stops']
const NOTHING_LOST = 'This study has no figure of losses; `loopwright losses` and `loopwright drivers` make one.'

/**
 * The slides as a file of presentation programs (Office Open XML).
 *
 * @example [...(await slidesOf({ question: 'Why?', scenarioName: 'Ring', date: new Date(0) }, [])).subarray(0, 2)] // => [80, 75]
 */
export async function slidesOf({ question, scenarioName, date }: SlidesHead, cells: readonly Cell[]): Promise<Uint8Array> {
  const { default: imported } = await import('pptxgenjs')
  // loaders differ in how deep they put it
  const Deck = ('default' in imported ? imported.default : imported) as typeof imported.default
  const deck = new Deck()
  deck.layout = 'LAYOUT_WIDE'
  deck.title = question
  deck.company = ''
  deck.author = 'loopwright'
  deck.defineSlideMaster({
    title: 'plain',
    objects: [
      {
        placeholder: {
          options: {
            name: 'title',
            type: 'title',
            x: PAGE.edge,
            y: PAGE.edge,
            w: BODY.w,
            h: TITLE_HEIGHT,
            fontSize: 26,
            bold: true,
            color: INK,
            fontFace: FONT,
            align: 'left',
            valign: 'top',
            margin: 0,
          },
          text: '',
        },
      },
      {
        text: {
          text: `${scenarioName}, ${date.toISOString().slice(0, 10)}. Estimates for planning; local codes and licensed practice decide on hazards.`,
          options: {
            x: PAGE.edge,
            y: PAGE.height - PAGE.edge,
            w: BODY.w - 1,
            h: 0.35,
            fontSize: 10,
            color: QUIET,
            fontFace: FONT,
            margin: 0,
          },
        },
      },
    ],
    slideNumber: { x: PAGE.width - PAGE.edge - 0.5, y: PAGE.height - PAGE.edge, fontSize: 10, color: QUIET, fontFace: FONT },
  })
  const slide = (title: string, notes: string) => {
    const made = deck.addSlide({ masterName: 'plain' })
    made.addText(title, { placeholder: 'title' })
    if (notes !== '') made.addNotes(notes)
    return made
  }
  const figures = await figureSvgs(cells)
  const lost = LOST.flatMap((start) => figures.filter(({ id }) => id.startsWith(start)))[0] ?? null
  const others = figures.filter(({ id }) => !LOST.some((start) => id.startsWith(start)))
  const curve = others.find(({ lead }) => lead) ?? others.find(({ kind }) => kind === 'chart') ?? null
  const answers = cells.filter((cell): cell is AnswerCell => cell.kind === 'answer')
  const answer = answers.find(({ lead }) => lead) ?? answers[0] ?? null

  const first = slide(question, answer?.sentences.map(plain).join('\n') ?? '')
  const large = (answer?.figures ?? []).slice(0, FIGURES_MAX)
  for (const [index, { label, value, sure }] of large.entries()) {
    const width = BODY.w / large.length
    const runs = [
      { text: label, options: { fontSize: 14, color: QUIET, breakLine: true } },
      { text: value, options: { fontSize: 40, bold: true, color: INK, breakLine: sure !== '' } },
      ...(sure === '' ? [] : [{ text: sure, options: { fontSize: 14, color: QUIET } }]),
    ]
    first.addText(runs, {
      x: BODY.x + index * width,
      y: BODY.y,
      w: width - 0.2,
      h: 1.7,
      fontFace: FONT,
      valign: 'top',
      margin: 0,
      fit: 'shrink',
    })
  }
  const top = large.length === 0 ? BODY.y : BODY.y + 1.9
  const said = (answer?.sentences ?? ['This study has no answer of its own.']).slice(0, SENTENCES_MAX)
  first.addText(
    said.map((sentence) => ({ text: plain(sentence), options: { breakLine: true, paraSpaceAfter: 6 } })),
    {
      x: BODY.x,
      y: top,
      w: BODY.w,
      h: BODY.y + BODY.h - top,
      fontSize: 18,
      color: INK,
      fontFace: FONT,
      valign: 'top',
      margin: 0,
      fit: 'shrink',
    },
  )

  const pictured = async (title: string, figure: FigureSvg | null, otherwise: string): Promise<void> => {
    const made = slide(figure === null ? title : plain(figure.finding), figure?.alt ?? '')
    if (figure === null) {
      made.addText(plain(otherwise), { ...BODY, fontSize: 18, color: INK, fontFace: FONT, valign: 'top', margin: 0 })
      return
    }
    const png = await pngOf(figure.svg)
    const [width, height] = sizeOf(png)
    const scale = Math.min(BODY.w / width, BODY.h / height)
    const [w, h] = [width * scale, height * scale]
    const data = `image/png;base64,${Buffer.from(png).toString('base64')}`
    made.addImage({ data, x: BODY.x + (BODY.w - w) / 2, y: BODY.y + (BODY.h - h) / 2, w, h, altText: figure.alt })
  }
  await pictured('The curve', curve, 'This study has no curve; `loopwright carriers` and `loopwright sweep` make one.')
  await pictured('What is lost', lost, NOTHING_LOST)

  const last = slide('Assumptions', '')
  const assumed = [
    ...cells.flatMap((cell) => (cell.kind === 'run' || cell.kind === 'sweep' ? [cell.sentence] : [])),
    ...cells.flatMap((cell) => (cell.kind === 'prose' && cell.folded !== undefined ? [cell.folded] : [])),
    ...cells.flatMap((cell) =>
      cell.kind === 'caution'
        ? [
            `${cell.title}: ${plainText(cell.markdown, 10_000)
              .replace(/^\s*- /gm, '')
              .replaceAll('\n', ' ')}`,
          ]
        : [],
    ),
  ]
  last.addText(
    [...new Set(assumed)].map((text) => ({ text: plain(text), options: { bullet: true, breakLine: true, paraSpaceAfter: 4 } })),
    { ...BODY, fontSize: 14, color: INK, fontFace: FONT, valign: 'top', margin: 0, fit: 'shrink' },
  )
  return (await deck.write({ outputType: 'nodebuffer' })) as Uint8Array
}

/** Without the marks of what is typed, and without control characters, which no such file may hold. */
const plain = (text: string): string => text.replace(/`([^`]+)`/g, '$1').replace(/\p{Cc}/gu, ' ')

/** Pixels of a PNG: its first chunk says them (PNG specification, 11.2.1). */
function sizeOf(png: Uint8Array): [width: number, height: number] {
  const view = new DataView(png.buffer, png.byteOffset)
  return [view.getUint32(16), view.getUint32(20)]
}
