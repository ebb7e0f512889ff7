// A run that ends the process in which it is: replication 70 of the seed `poison`, when it names its random worlds.
const charCodeAt = String.prototype.charCodeAt
String.prototype.charCodeAt = function (at) {
  if (at === 0 && this.startsWith('poison/70/')) process.kill(process.pid, 'SIGKILL')
  return charCodeAt.call(this, at)
}
