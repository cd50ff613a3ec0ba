import type { Edit, Issue } from '@ampwright/conversion'
import { pathOf } from './edits.ts'

/** A file may name a part nobody knows yet, and says so; what is set now is a slip of the pen: the issues about parts these edits set. */
export function unknownParts(edits: readonly Pick<Edit, 'path'>[], issues: readonly Issue[]): readonly Issue[] {
  const set = edits.map(e => pathOf(e.path))
  return issues.filter(i => i.about === 'part' && set.some(path => i.path === path || i.path.startsWith(`${path}.`)))
}
