import { ENGINE_VERSION } from '@loopwright/study'

/** Version of this package. */
export const VERSION = '0.1.0'

/** What `--version` prints: of the command, and of the engine that makes the numbers. */
export const versionLine = (): string => `loopwright ${VERSION}, engine ${ENGINE_VERSION}`
