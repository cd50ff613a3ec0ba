import { type Axis, headingOf } from './axis.ts'
import type { ChartSpec } from './line-chart.ts'
import { type Listing, pixelAt, type Readout, type Scale, valueAt } from './picture.ts'
import { readAt } from './thin.ts'

/** Reads every line at a pixel across the picture: straight between the points given, not between those drawn. */
export function readoutOf(spec: ChartSpec, x: Axis, ys: readonly Axis[], xScale: Scale, scales: readonly Scale[]) {
  return (pixel: number): Readout => {
    const [left, right] = xScale.range,
      held = Math.min(Math.max(Number.isFinite(pixel) ? pixel : left, left), right),
      at = valueAt(xScale, held)
    return {
      x: at,
      text: x.read(at),
      pixel: held,
      values: spec.panels.flatMap((p, i) =>
        p.lines.map(line => {
          const value = readAt(line.x ?? spec.x.values, line.values, at),
            y = ys[i] as Axis
          return {
            name: line.name,
            label: line.label,
            value,
            text: value === undefined ? '–' : y.read(value),
            y: value === undefined ? undefined : pixelAt(scales[i] as Scale, value),
          }
        }),
      ),
    }
  }
}

/** Every line as a column, in the units of the axes; lines with places of their own along the axis are read at the common ones. */
export function listed(spec: ChartSpec, x: Axis, ys: readonly Axis[]): Listing {
  const lines = spec.panels.flatMap((p, i) => p.lines.map(line => ({ line, y: ys[i] as Axis })))
  return {
    columns: [headingOf(x.quantity.label, x.unit), ...lines.map(({ line, y }) => headingOf(line.label, y.unit))],
    rows: Array.from(spec.x.values, (at, n) => [
      tidy(x.fromSI(at)),
      ...lines.map(({ line, y }) => {
        const v = line.x ? readAt(line.x, line.values, at) : (line.values[n] as number)
        return v === undefined || !Number.isFinite(v) ? undefined : tidy(y.fromSI(v))
      }),
    ]),
  }
}
/** Seven digits: more than any input holds, and no tail of binary fractions. */
export const tidy = (value: number): number => Number(value.toPrecision(7))
