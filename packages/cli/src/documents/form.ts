/** How every document of `--json` begins. */
import { only, type Schema } from './schemaParts.ts'

/** Version of the form, and what the document tells. */
export const formHead = (document: string): { readonly format: 1; readonly document: string } => ({ format: 1, document })

export const formHeadSchema = (document: string): Record<string, Schema> => ({
  format: only(1, 'version of this form'),
  document: only(document, 'what this document tells'),
})
