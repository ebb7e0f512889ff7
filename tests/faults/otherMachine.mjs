// Another kind of processor, by its name alone; and where BITS is "other" by its logarithms too, of which one of some is a bit off.
Object.defineProperty(process, 'arch', { value: 'abacus' })
if (process.env.BITS === 'other') {
  const log = Math.log
  Math.log = (x) => (x > 2 && x < 2.5 ? log(x) * (1 + Number.EPSILON) : log(x))
}
