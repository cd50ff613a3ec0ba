import type { Typeset } from '@ampwright/workbench'
import { createElement, type ReactNode } from 'react'

/** A formula set as mathematics, one line for each equation. `text` is what stands for it where mathematics cannot be drawn or spoken. */
export function MathText({ lines, text }: { readonly lines: readonly (readonly Typeset[])[]; readonly text: string }) {
  const printed = text.split('\n')
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a long formula is scrolled by keyboard too
    <div className="math scroll" tabIndex={0} role="group" aria-label="Formula">
      {lines.map((equation, i) =>
        equation.map((line, j) =>
          createElement(
            'math',
            {
              key: `${i} ${j}`,
              display: 'block',
              ...(j ? { className: 'on' } : {}),
              ...(equation.length === 1 ? { alttext: printed[i] } : {}),
            },
            drawn(line, 0),
          ),
        ),
      )}
    </div>
  )
}

const drawn = (s: Typeset | string, key: number): ReactNode =>
  typeof s === 'string' ? s : createElement(s.tag, { key, ...s.with }, ...s.of.map(drawn))

/** A symbol with its index below, as it stands in the formula. */
export function Symbol({ of }: { readonly of: string }) {
  const [base, index] = of.split(/_(.*)/s)
  return (
    <i className="symbol">
      {base}
      {index === undefined ? null : <sub>{index}</sub>}
    </i>
  )
}
