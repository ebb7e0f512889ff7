/** What stands in node_modules, by the lock file; and what the manifests ask for. */
import { readFileSync } from 'node:fs'

export interface LockedPackage {
  /** "node_modules/zod" */
  readonly place: string
  readonly name: string
  readonly version: string
  /** SPDX expression, as the package says it; null: it says none */
  readonly licence: string | null
  /** needed by tests and tools alone */
  readonly dev: boolean
  readonly installScript: boolean
}

interface Lock {
  readonly packages: Readonly<
    Record<string, { version?: string; license?: string; dev?: boolean; link?: boolean; hasInstallScript?: boolean }>
  >
}

/** Every package of others, by name. */
export function lockedPackages(lockText: string): LockedPackage[] {
  return Object.entries((JSON.parse(lockText) as Lock).packages)
    .filter(([place, { link }]) => place.includes('node_modules/') && link !== true)
    .map(([place, { version = '', license = null, dev = false, hasInstallScript = false }]) => ({
      place,
      name: place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length),
      version,
      licence: license,
      dev,
      installScript: hasInstallScript,
    }))
    .toSorted((a, b) => (a.place < b.place ? -1 : 1))
}

export interface Asked {
  readonly manifest: string
  readonly name: string
  readonly version: string
}

const KINDS = ['dependencies', 'devDependencies', 'optionalDependencies'] as const

/** What the manifests ask for of others; what is our own stands in the workspace. */
export function askedFor(manifests: readonly string[]): Asked[] {
  return manifests.flatMap((manifest) => {
    const said = JSON.parse(readFileSync(manifest, 'utf8')) as Partial<Record<(typeof KINDS)[number], Record<string, string>>>
    return KINDS.flatMap((kind) =>
      Object.entries(said[kind] ?? {})
        .filter(([name]) => !name.startsWith('@loopwright/') && name !== 'loopwright')
        .map(([name, version]) => ({ manifest, name, version })),
    )
  })
}
