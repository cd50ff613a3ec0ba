/**
 * American wire gauge (ASTM B258): n is 36 at 0.005 in, −3 (written 0000 or 4/0) at 0.46 in, with 39 equal ratios between.
 *
 * The standard's printed tables round the diameter; the formula is taken here. A stranded cable of the same gauge has 2 to 5 % more copper
 * resistance for its size: prefer the cable's datasheet.
 */
const FINEST = 56
const THICKEST = -3
const INCH = 0.0254

/** Cross-section [m²] of a solid wire of gauge n. */
export function gaugeArea(n: number): number {
  const diameter = 0.005 * INCH * 92 ** ((36 - n) / 39)
  return (Math.PI / 4) * diameter * diameter
}

/** n from what stands on the reel: `2`, `0`, `00`, `2/0`, `0000`, `4/0`; undefined where there is no such gauge. */
export function gaugeNumber(text: string): number | undefined {
  const slashed = /^([1-4])\/0$/.exec(text)
  if (slashed) return 1 - Number(slashed[1])
  if (/^0{1,4}$/.test(text)) return 1 - text.length
  if (!/^[1-9]\d?$/.test(text)) return undefined
  const n = Number(text)
  return n <= FINEST ? n : undefined
}

/** The gauge whose cross-section is within one part in a thousand of the given one, as it is written: `2`, `2/0`; undefined if there is none. */
export function gaugeName(area: number): string | undefined {
  for (let n = THICKEST; n <= FINEST; n++) {
    if (Math.abs(area / gaugeArea(n) - 1) < 1e-3) return n <= 0 ? `${1 - n}/0` : String(n)
  }
  return undefined
}
