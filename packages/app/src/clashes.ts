import type { Edit } from '@ampwright/conversion'
import type { FieldView } from '@ampwright/workbench'
import type { Clash } from './server/api.ts'

/** What is left of clashes after edits: what was typed over is settled, the last word is the person's. */
export function clashesAfter(clashes: readonly Clash[], edits: readonly Edit[]): readonly Clash[] {
  const paths = edits.map(e => (typeof e.path === 'string' ? e.path : e.path.join('.')))
  return clashes.filter(c => !paths.some(p => p === c.path || p.startsWith(`${c.path}.`) || c.path.startsWith(`${p}.`)))
}
/** What a place that clashed is called: of things in a map the label alone would not say which, «Within (sprint)». */
export function placeCalled(field: FieldView, path: string): string {
  const within = path.split('.').slice(1, -1).at(-1)
  return within === undefined ? field.label : `${field.label} (${within})`
}
