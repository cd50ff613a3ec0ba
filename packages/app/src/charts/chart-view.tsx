import { pixelAt, type Readout, type Scale, valueAt } from '@ampwright/drawing'
import { type PointerEvent, useEffect, useId, useRef, useState } from 'react'
import { useHand, useOf } from '../shell/in-hand.ts'
import type { DrawingLine, Drawn, FileKind } from '../worker/drawings.ts'
import { saveAs } from '../save-as.ts'
import { savePng } from './export.ts'
import { RatioHandle } from './ratio-handle.tsx'

/** A drawing with its caption, a cursor that reads it out by pointer or arrow keys, its text for those who cannot see it, and ways to take it along. */
export function ChartView({ drawing }: { readonly drawing: DrawingLine }) {
  const { conversion } = useHand(),
    told = useOf(o => o.told),
    frame = useRef<HTMLDivElement>(null),
    [width, setWidth] = useState(0),
    [drawn, setDrawn] = useState<Drawn>(),
    [read, setRead] = useState<Readout>(),
    [ratio, setRatio] = useState<number>(),
    at = useRef<number>(undefined),
    id = useId()
  useEffect(() => {
    const watch = new ResizeObserver(([e]) => setWidth(Math.floor(e?.contentRect.width ?? 0)))
    if (frame.current) watch.observe(frame.current)
    return () => watch.disconnect()
  }, [])
  useEffect(() => {
    let gone = false
    if (width > 0) void conversion.draw(drawing.id, width).then(d => gone || setDrawn(d))
    return () => {
      gone = true
    }
  }, [conversion, drawing.id, width, told])
  const take = (as: FileKind, save: (text: string) => void): void => {
    void conversion.drawingFile(drawing.id, as, 760).then((t: string | undefined) => {
      if (t !== undefined) save(t)
    })
  }
  const point = (pixel: number): void => {
    if (!drawn?.cursor || !drawn.scale) return
    const [a, b] = drawn.scale.range
    at.current = Math.min(Math.max(pixel, Math.min(a, b)), Math.max(a, b))
    const asked = at.current
    void conversion.readAt(drawing.id, asked).then(r => at.current === asked && setRead(r))
  }
  const held = drawing.kind === 'ratio window' ? drawn?.scale : undefined
  /** The handle goes where it is dragged, along its axis. */
  const drag = (scale: Scale, e: PointerEvent<HTMLDivElement>): void => {
    const [p, q] = scale.range,
      pixel = Math.min(Math.max(e.clientX - e.currentTarget.getBoundingClientRect().left, Math.min(p, q)), Math.max(p, q))
    setRatio(valueAt(scale, pixel))
  }
  return (
    <figure className="chart">
      <figcaption>
        {drawing.label}
        <span className="grow" />
        <button type="button" className="bare small" onClick={() => take('svg', t => saveAs(t, 'image/svg+xml', `${drawing.id}.svg`))}>
          SVG
        </button>
        <button type="button" className="bare small" onClick={() => take('svg', t => void savePng(t, `${drawing.id}.png`))}>
          PNG
        </button>
        <button type="button" className="bare small" onClick={() => take('csv', t => saveAs(t, 'text/csv', `${drawing.id}.csv`))}>
          CSV
        </button>
        {drawing.plan ? (
          <button type="button" className="bare small" onClick={() => take('dxf', t => saveAs(t, 'image/vnd.dxf', `${drawing.id}.dxf`))}>
            DXF
          </button>
        ) : null}
      </figcaption>
      <div
        ref={frame}
        className={held ? 'plot held' : 'plot'}
        tabIndex={drawn?.cursor ? 0 : undefined}
        role={drawn?.cursor ? 'slider' : undefined}
        aria-label={drawn?.cursor ? `${drawing.label}: cursor` : undefined}
        aria-valuetext={
          drawn?.cursor
            ? read
              ? `${read.text}: ${read.values.map(v => `${v.label} ${v.text}`).join('; ')}`
              : 'no value read yet'
            : undefined
        }
        aria-valuenow={drawn?.cursor ? Math.round(read?.pixel ?? drawn.scale?.range[0] ?? 0) : undefined}
        aria-valuemin={drawn?.cursor ? Math.round(drawn.scale?.range[0] ?? 0) : undefined}
        aria-valuemax={drawn?.cursor ? Math.round(drawn.scale?.range[1] ?? 1) : undefined}
        aria-describedby={`${id}-text`}
        onPointerDown={e => {
          if (!held) return
          e.currentTarget.setPointerCapture(e.pointerId)
          drag(held, e)
        }}
        onPointerMove={e => {
          if (held && e.buttons) drag(held, e)
          point(e.clientX - e.currentTarget.getBoundingClientRect().left)
        }}
        onPointerLeave={() => {
          at.current = undefined
          setRead(undefined)
        }}
        onKeyDown={e => {
          const by = e.key === 'ArrowRight' ? 4 : e.key === 'ArrowLeft' ? -4 : 0
          if (!by || !drawn?.scale) return
          e.preventDefault()
          point((read?.pixel ?? drawn.scale.range[0]) + by * (e.shiftKey ? 10 : 1))
        }}
      >
        {drawn ? <div dangerouslySetInnerHTML={{ __html: drawn.svg }} /> : <p className="quiet">Drawing …</p>}
        {held && drawn && ratio !== undefined ? (
          <i className="cursor moved" style={{ left: pixelAt(held, ratio), height: drawn.height }} />
        ) : null}
        {read && drawn ? <i className="cursor" style={{ left: read.pixel, height: drawn.height }} /> : null}
      </div>
      {drawn?.cursor ? (
        <p className="readout" aria-hidden="true">
          {read ? (
            <>
              <b>{read.text}</b>{' '}
              {read.values
                .filter(v => v.value !== undefined)
                .slice(0, 9)
                .map(v => (
                  <span key={v.name}>
                    {v.label} <span className="num">{v.text}</span>
                  </span>
                ))}
            </>
          ) : (
            'Point at the drawing, or focus it and use the arrow keys, to read it.'
          )}
        </p>
      ) : null}
      {drawing.kind === 'ratio window' && drawing.item && drawn?.scale ? (
        <RatioHandle unit={drawing.item} scale={drawn.scale} ratio={ratio} move={setRatio} />
      ) : null}
      <details className="small">
        <summary>In words</summary>
        <p id={`${id}-text`}>{drawn?.text}</p>
      </details>
    </figure>
  )
}
