/** Titles of the parts of one kind: what people call them, where that is not their name. */
import { titleFault } from '@loopwright/line/check'
import type { Entry, Located } from '../text/located.ts'
import * as say from '../problems/messages.ts'
import { type Context, textOf } from './context.ts'

export interface Titles {
  /**
   * Title of a part, which is its name unless one is said.
   *
   * @param at    the title; null where none is said here
   * @param part  where the part is named, for findings about its name
   */
  read(name: string, at: Located | null, part: Entry | Located): string
  /** titles by name, where they differ from it */
  given(): ReadonlyMap<string, string>
}

/** @param what  the kind in the plural, for findings */
export function createTitles(context: Context, what: string): Titles {
  const said = new Map<string, string>()
  const owners = new Map<string, string>()
  const named = new Set<string>()
  function read(name: string, at: Located | null, part: Entry | Located): string {
    const earlier = said.get(name)
    const title = textOf(at) ?? earlier ?? name
    const place = at ?? ('key' in part ? part.value : part)
    const fault = at === null || textOf(at) === null ? null : titleFault(title)
    if (fault !== null) context.report.add(place, say.badTitle(title, fault))
    else if (at !== null && earlier !== undefined && earlier !== title) context.report.add(place, say.titleTwice(name, earlier))
    else if ((owners.get(title) ?? name) !== name) context.report.add(place, say.duplicateTitle(what, title))
    else {
      if (at !== null && named.has(name) && owners.get(name) === name) owners.delete(name)
      owners.set(title, name)
      if (title !== name) said.set(name, title)
    }
    named.add(name)
    return title
  }
  return { read, given: () => said }
}
