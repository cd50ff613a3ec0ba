import { cycles, definedBy, filling, isCycleId, part, parts } from '@ampwright/catalogue'
import type { LookUps } from '@ampwright/conversion'
import { curve } from '@ampwright/engine'

/**
 * What a conversion may look up: parts of the catalogue, and files that stand beside it where somebody can fetch them.
 * Class records are assumptions and show as such, apart from what makes a part one of its class.
 */
export const lookUps = (attachments?: LookUps['attachments']): LookUps => ({
  parts: id => {
    const found = part(id)
    return found && { id: found.id, how: 'assumed', fields: filling(found), defined: definedBy(found) }
  },
  partNames: parts.map(p => p.id),
  cycles: id => (isCycleId(id) ? curve(cycles[id]().times, cycles[id]().speeds) : undefined),
  cycleNames: Object.keys(cycles),
  ...(attachments === undefined ? {} : { attachments }),
})
