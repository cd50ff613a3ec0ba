import { readQuantity } from '@ampwright/conversion'
import type { Kind } from '@ampwright/engine'

/** One stated accuracy: `± 3 mm`, `± 1 kg (scales)`. Words about something else than the field, such as «on road load», make it none. */
const STATED = /^± (\d+(?:\.\d+)?) ([^\s()]+)(?: \([^()]*\))?$/

/**
 * Half-width [SI] a value is known with when it is measured as well as a tool's accuracy states; undefined where that is no number of the
 * field's kind. Of several tools the coarsest counts: nothing is promised that one of them does not give.
 */
export function halfByTool(accuracy: string, value: number, kind: Kind): number | undefined {
  const halves = accuracy.split(', ').flatMap(piece => {
    const [, number, unit] = STATED.exec(piece) ?? []
    return number === undefined || unit === undefined ? [] : (halfOf(Number(number), unit, value, kind) ?? [])
  })
  return halves.length ? Math.max(...halves) : undefined
}

function halfOf(number: number, unit: string, value: number, kind: Kind): number | undefined {
  // As in the file: a share ± 1 % is ± one point; of anything else it is a hundredth of the value.
  if (unit === '%') return (number / 100) * (kind === 'share' ? 1 : Math.abs(value))
  const read = readQuantity(`${number} ± ${number} ${unit}`, kind)
  return read.ok ? read.quantity.half : undefined
}
