/**
 * A hook of Node's import, after the loader's own. That one has each function named again whenever it is made, in case that names were shortened: here none are, and where
 * functions are made by the million it takes a tenth of the time. So what names them gives them back as they are. No place of a text moves.
 */
const NAMES = '__name=(target,value)=>__defProp(target,"name",{value,configurable:true})'
const PLAIN = '__name=(target)=>target'.padEnd(NAMES.length)

export async function load(url, context, next) {
  const loaded = await next(url, context)
  return /\.ts(\?|$)/.test(url) && loaded.source != null ? { ...loaded, source: String(loaded.source).replace(NAMES, PLAIN) } : loaded
}
