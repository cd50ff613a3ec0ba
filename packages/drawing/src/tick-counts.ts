/** About how many ticks an axis of a length [px] carries without crowding its numbers. */
export const xTickCount = (width: number): number => Math.max(2, Math.min(10, Math.round(width / 72)))
export const yTickCount = (height: number): number => Math.max(2, Math.min(8, Math.round(height / 38)))
