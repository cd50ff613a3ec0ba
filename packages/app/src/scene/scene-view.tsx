import { useCallback, useEffect, useRef, useState } from 'react'
import { type Picked, ScanPanel, usePartMeshes, useScans } from '../scans/scan-panel.tsx'
import { useAway, useHand, useOf } from '../shell/in-hand.ts'
import type { SceneView as View } from '../worker/drawings.ts'
import type { CarScene, Label, Look, Place } from './car-scene.ts'
import { MoveBar, movedTo } from './move-bar.tsx'

const CUTS = { none: undefined, 'from the front': 0, 'from the left': 1, 'from above': 2 } as const
type Cut = keyof typeof CUTS
const SIDES = { corner: 'From a corner', above: 'From above', left: 'From its left', ahead: 'From ahead' } as const

/** The car in three dimensions: turned, cut open, measured, and what goes in moved about. Nothing here is not also in the fields and drawings. */
export function SceneView() {
  const { conversion } = useHand(),
    told = useOf(o => o.told),
    away = useAway(),
    canvas = useRef<HTMLCanvasElement>(null),
    frame = useRef<HTMLDivElement>(null),
    drawn = useRef<CarScene>(undefined),
    [view, setView] = useState<View>(),
    [labels, setLabels] = useState<readonly Label[]>([]),
    [fault, setFault] = useState<string>(),
    [chosen, setChosen] = useState<string>(),
    [moved, setMoved] = useState<{ name: string; to: Place }>(),
    [layers, setLayers] = useState<Look['layers']>({ spaces: true, kept: true, car: true, mass: false, scans: true, seeThrough: false }),
    [cut, setCut] = useState<Cut>('none'),
    [depth, setDepth] = useState(0.5),
    [picking, setPicking] = useState<string>(),
    [picked, setPicked] = useState<Picked>(),
    scans = useScans(),
    parts = usePartMeshes(),
    pickingNow = useRef<string>(undefined),
    mayMove = useRef(true)
  pickingNow.current = picking
  mayMove.current = !away && !matchMedia('(pointer: coarse)').matches
  useEffect(() => {
    if (told) void conversion.scene().then(setView)
    setMoved(undefined)
  }, [conversion, told])
  const there = view !== undefined
  useEffect(() => {
    if (!there || !canvas.current || !frame.current) return
    let gone = false,
      scene: CarScene | undefined
    const watch = new ResizeObserver(([e]) => e && scene?.resize(e.contentRect.width, e.contentRect.height))
    // A large library: fetched when somebody first looks.
    void import('./car-scene.ts').then(m => {
      if (gone || !canvas.current || !frame.current) return
      try {
        scene = drawn.current = new m.CarScene(canvas.current, {
          choose: setChosen,
          move: (name, to) => setMoved({ name, to }),
          labels: setLabels,
          mayMove: () => mayMove.current,
          picking: () => pickingNow.current !== undefined,
          sight: (from, towards) => {
            const scan = pickingNow.current
            if (scan === undefined) return
            void conversion.scans.pick(scan, from, towards).then(at => at && setPicked({ scan, onScan: at.onScan }))
          },
        })
        watch.observe(frame.current)
        Object.assign(window, {
          ampwrightFrameTime: (n: number, moving: boolean) => scene?.frameTime(n, moving),
          ampwrightTriangles: () => scene?.triangles(),
        })
        setLayers(l => ({ ...l }))
      } catch {
        setFault('This browser draws nothing in three dimensions. The drawings below show the same.')
      }
    })
    return () => {
      gone = true
      watch.disconnect()
      scene?.dispose()
      drawn.current = undefined
    }
  }, [there, conversion])
  useEffect(() => {
    const along = CUTS[cut]
    if (view)
      drawn.current?.show(view, { layers, chosen, cut: along === undefined ? undefined : { along, at: cutPlace(view, along, depth) } })
    if (moved) drawn.current?.put(moved.name, moved.to)
  }, [view, layers, chosen, cut, depth, moved])
  useEffect(() => {
    void drawn.current?.showScans(scans, conversion.scans.mesh)
  }, [scans, conversion, layers])
  useEffect(() => {
    void drawn.current?.showParts(
      parts.filter(p => p.stands),
      conversion.scans.partMesh,
    )
  }, [parts, conversion, layers])
  const nudge = useCallback(
    (by: Place) => {
      const body = view?.bodies.find(b => b.name === chosen)
      if (!body || !mayMove.current) return
      const from = moved?.name === body.name ? moved.to : body.box.centre
      setMoved({ name: body.name, to: [from[0] + by[0], from[1] + by[1], from[2] + by[2]] })
    },
    [view, chosen, moved],
  )
  if (!view) return <p className="quiet">Once something has a shape, the car stands here in three dimensions.</p>
  const body = view.bodies.find(b => b.name === chosen)
  return (
    <figure className="chart scene">
      <figcaption>
        The car in three dimensions
        <span className="grow" />
        {(Object.keys(SIDES) as (keyof typeof SIDES)[]).map(side => (
          <button key={side} type="button" className="bare small" onClick={() => drawn.current?.frame(side)}>
            {SIDES[side]}
          </button>
        ))}
      </figcaption>
      {fault ? <p>{fault}</p> : null}
      <div
        ref={frame}
        className="space"
        role="application"
        tabIndex={0}
        aria-label={`The car in three dimensions, ${view.bodies.length} shapes. ${chosen ? `Chosen: ${chosen}; arrow keys, Page Up and Page Down move it.` : 'Choose a shape from the list below to move it.'}`}
        onKeyDown={e => {
          const step = e.shiftKey ? 0.05 : 0.005,
            by = STEPS[e.key]
          if (!by || !chosen) return
          e.preventDefault()
          nudge([by[0] * step, by[1] * step, by[2] * step])
        }}
      >
        <canvas ref={canvas} />
        {labels.map(l => (
          <span key={l.name} className={l.name === chosen ? 'tag on' : 'tag'} style={{ left: l.x, top: l.y }} aria-hidden="true">
            {l.name}
            {layers.mass ? ` ${view.bodies.find(b => b.name === l.name)?.weighs ?? ''}` : ''}
          </span>
        ))}
      </div>
      <div className="handle">
        <label>
          Chosen shape{' '}
          <select value={chosen ?? ''} onChange={e => setChosen(e.target.value || undefined)}>
            <option value="">none chosen</option>
            {view.bodies.map(b => (
              <option key={b.name}>{b.name}</option>
            ))}
          </select>
        </label>
        {(['spaces', 'kept', 'car', 'mass', ...(scans.length ? (['scans', 'seeThrough'] as const) : [])] as const).map(l => (
          <label key={l}>
            <input type="checkbox" checked={layers[l]} onChange={e => setLayers({ ...layers, [l]: e.target.checked })} />{' '}
            {
              {
                spaces: 'spaces',
                kept: 'kept free',
                car: 'outline of the car',
                mass: 'mass',
                scans: 'scans',
                seeThrough: 'see through scans',
              }[l]
            }
          </label>
        ))}
        <label>
          Cut away{' '}
          <select value={cut} onChange={e => setCut(e.target.value as Cut)}>
            {Object.keys(CUTS).map(c => (
              <option key={c}>{c}</option>
            ))}
          </select>
        </label>
        {cut === 'none' ? null : (
          <label>
            how deep <input type="range" min={0} max={1} step={0.01} value={depth} onChange={e => setDepth(Number(e.target.value))} />
          </label>
        )}
      </div>
      {body ? <Between view={view} one={body.name} /> : null}
      {moved && view.bodies.some(b => b.name === moved.name && b.at) ? (
        <MoveBar edits={movedTo(view, moved)} name={moved.name} putBack={() => setMoved(undefined)} />
      ) : null}
      {moved && !view.bodies.some(b => b.name === moved.name && b.at) ? (
        <p className="small">Its place rests on values that are not in the file yet: give it a place first.</p>
      ) : null}
      <ScanPanel
        picking={picking}
        pickOn={scan => {
          setPicking(scan)
          if (scan !== undefined) frame.current?.scrollIntoView({ block: 'end' })
          setPicked(undefined)
        }}
        picked={picked}
        putAway={() => setPicked(undefined)}
        showPacked={boxes => drawn.current?.showPacked(boxes)}
      />
      <p className="small quiet">
        Drag beside the shapes to turn the car, drag a shape to move it level, with Shift upright; arrow keys and Page Up or Down move the
        chosen one by 5 mm, with Shift by 50. On a phone, look and measure.
      </p>
    </figure>
  )
}
const STEPS: Readonly<Record<string, Place>> = {
  ArrowLeft: [-1, 0, 0],
  ArrowRight: [1, 0, 0],
  ArrowUp: [0, 1, 0],
  ArrowDown: [0, -1, 0],
  PageUp: [0, 0, 1],
  PageDown: [0, 0, -1],
}

/** How far into the car a cut goes, as a place. */
function cutPlace({ bodies, car }: View, along: 0 | 1 | 2, depth: number): number {
  const all = bodies.map(b => b.box.centre[along]),
    [low, high] = car
      ? ([
          [car.front, car.rear],
          [-car.width / 2, car.width / 2],
          [0, car.height],
        ][along] as [number, number])
      : [Math.min(...all) - 0.3, Math.max(...all) + 0.3]
  return along === 2 ? high + (low - high) * depth : low + (high - low) * depth
}

/** Air between the chosen shape and another. */
function Between({ view, one }: { readonly view: View; readonly one: string }) {
  const { conversion } = useHand(),
    told = useOf(o => o.told),
    [other, setOther] = useState(''),
    [gap, setGap] = useState<string>()
  useEffect(() => {
    setGap(undefined)
    if (other && other !== one) void conversion.gapBetween(one, other).then(setGap)
  }, [conversion, told, one, other])
  return (
    <p className="small">
      <label>
        Air between {one} and{' '}
        <select value={other} onChange={e => setOther(e.target.value)}>
          <option value="">…</option>
          {view.bodies
            .filter(b => b.name !== one)
            .map(b => (
              <option key={b.name}>{b.name}</option>
            ))}
        </select>
      </label>{' '}
      <b className="num" role="status">
        {gap ?? ''}
      </b>
    </p>
  )
}
