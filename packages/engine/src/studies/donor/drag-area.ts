import type { Donor } from '../../model/donor.ts'
import { dragAreaBySize } from '../../vehicle/drag-area.ts'
import { type Field, isGap, type Value } from '../../working/value.ts'
import type { Maker } from '../study.ts'

type Sizes = { readonly width: Field; readonly height: Field; readonly drag: Field }

/** The drag area somebody knows; else, where the car was measured across, by its sizes and the coefficient of its class; else the area of its class. */
export function dragAreaOf({ dragArea, width, height, dragCoefficient }: Donor): Field | Sizes {
  const known = !isGap(dragArea) && (dragArea.origin?.how !== 'assumed' || dragArea.text !== undefined)
  return known || isGap(width) || isGap(height) || isGap(dragCoefficient) ? dragArea : { width, height, drag: dragCoefficient }
}

/** That area as a value; worked out inside the calling study where it comes from sizes. */
export const dragArea = (
  make: Maker,
  area: Value | { readonly width: Value; readonly height: Value; readonly drag: Value },
  more: { item?: string; label: string },
): Value => ('drag' in area ? make.work('drag-area-by-size', dragAreaBySize, area, more) : area)
