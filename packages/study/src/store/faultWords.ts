/** What each fault of a file means to who asked for it. */
const KNOWN: Readonly<Record<string, string>> = {
  EACCES: 'you may not write or read there',
  EPERM: 'you may not write or read there',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  ENOENT: 'the folder cannot be made there',
  ENOTDIR: 'a part of the path is a file, not a folder',
  EEXIST: 'a part of the path is a file, not a folder',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'a link leads back to itself',
}

/**
 * Why a file could not be read or written, without its path, which is said already.
 *
 * @param error  as the system throws it
 * @example faultWords(Object.assign(new Error('ENOSPC: no space left on device, write'), { code: 'ENOSPC' })) // => 'the disk is full'
 */
export function faultWords(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException
  return code === undefined ? message : (KNOWN[code] ?? message.split(',')[0]!)
}
