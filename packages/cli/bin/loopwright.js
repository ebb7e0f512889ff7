#!/usr/bin/env node
// In a clone the command runs from its TypeScript source, bundled on the way; installed, from dist.
import { existsSync } from 'node:fs'
import { register } from 'node:module'

if (existsSync(new URL('../src/cli.ts', import.meta.url))) {
  const { bundleOfClone } = await import('./bundle.js')
  const bundled = await bundleOfClone()
  if (bundled === null) {
    const preferSource = `export const resolve = (name, context, next) =>
      next(name, { ...context, conditions: ['loopwright-source', ...context.conditions] })`
    register(`data:text/javascript,${encodeURIComponent(preferSource)}`)
    const tsx = await import('tsx/esm/api')
    tsx.register()
  }
  await import(bundled ?? '../src/cli.ts')
} else await import('../dist/cli.js')
