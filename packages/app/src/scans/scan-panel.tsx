import { scanEdits } from '@ampwright/workbench'
import { useId, useState, useSyncExternalStore } from 'react'
import { wrongText } from '../field/field.tsx'
import { bytesOf, Drop } from '../files/drop.tsx'
import { useAway, useHand } from '../shell/in-hand.ts'
import type { PartShown, ScanShown } from './car-scans.ts'
import type { PackedBox } from './packed-meshes.ts'
import { Packer } from './packer.tsx'

/** A point picked on a scan, as its file counts. */
export type Picked = { readonly scan: string; readonly onScan: readonly [number, number, number] }

/** The scans of the conversion in hand, as far as they are read. */
export function useScans(): readonly ScanShown[] {
  const { scans } = useHand().conversion
  return useSyncExternalStore(scans.subscribe, scans.snapshot)
}

/** The meshes of parts of the conversion in hand, as far as they are read. */
export function usePartMeshes(): readonly PartShown[] {
  const { scans } = useHand().conversion
  return useSyncExternalStore(scans.subscribe, scans.parts)
}

/** Scans: what they are, how well they lie, points picked on them, and a place to drop another. */
export function ScanPanel({
  picking,
  pickOn,
  picked,
  putAway,
  showPacked,
}: {
  /** The scan that points are picked on now. */
  readonly picking: string | undefined
  readonly pickOn: (scan: string | undefined) => void
  readonly picked: Picked | undefined
  readonly putAway: () => void
  readonly showPacked: (boxes: readonly PackedBox[]) => void
}) {
  const scans = useScans(),
    parts = usePartMeshes(),
    away = useAway()
  return (
    <section aria-label="Scans" className="scans">
      {scans.map(s => (
        <div key={s.scan} className="note">
          <p>
            <b>{s.scan}</b> <span className="num quiet">{s.file}</span>, {s.triangles.toLocaleString('en-GB')} triangles. {lies(s)}
          </p>
          {s.told?.each.length ? (
            <p className="small">Left over: {s.points.map((p, i) => `${p} ${s.told?.each[i] ?? ''}`).join(' · ')}</p>
          ) : null}
          {s.told?.noSpace ? <p className="small">Free space is not found: {s.told.noSpace}</p> : null}
          <button
            type="button"
            aria-pressed={picking === s.scan}
            disabled={away}
            onClick={() => pickOn(picking === s.scan ? undefined : s.scan)}
          >
            {picking === s.scan ? 'Stop picking' : 'Pick a point on it'}
          </button>{' '}
          {s.space ? <Packer scan={s.scan} show={showPacked} /> : null}
          {picking === s.scan && picked?.scan !== s.scan ? (
            <p className="small" role="status">
              Click a place of the scan that you can also measure in the car: a strut top, a corner of the bulkhead, a bolt.
            </p>
          ) : null}
          {picked?.scan === s.scan ? <PointForm key={picked.onScan.join()} picked={picked} taken={s.points} done={putAway} /> : null}
        </div>
      ))}
      {parts.map(p => (
        <p key={p.shape} className="note">
          <b>{p.shape}</b> <span className="num quiet">{p.file}</span>. {stands(p)}
        </p>
      ))}
      <NewScan taken={scans.map(s => s.scan)} />
    </section>
  )
}

function lies({ lies, points, told, fault }: ScanShown): string {
  if (fault !== undefined) return `It cannot be read: ${fault}`
  if (told?.fault !== undefined) return `It does not lie in the car: ${told.fault}`
  if (lies)
    return `It lies by ${points.length} points, ${told?.leftOver ?? ''} left over: more than a few millimetres means that one was misread.`
  return `It is only laid out to be looked at: ${points.length} of three points are picked.`
}

function stands({ triangles, closed, stands, fault }: PartShown): string {
  if (fault !== undefined) return `Its mesh cannot be read: ${fault}. Its box stands for it.`
  if (!stands) return 'Its mesh is not as large as its sides say: its box stands for it.'
  return `Drawn and measured by its mesh, ${triangles.toLocaleString('en-GB')} triangles${closed ? '' : ', open: what lies inside it is not noticed'}.`
}

const PLACES = [
  ['x', 'behind the front axle'],
  ['y', 'to the right of the centre line'],
  ['z', 'above the ground'],
] as const

/** Name and place in the car of a point that was picked. */
function PointForm({ picked, taken, done }: { readonly picked: Picked; readonly taken: readonly string[]; readonly done: () => void }) {
  const { conversion } = useHand(),
    id = useId(),
    [name, setName] = useState(''),
    [place, setPlace] = useState<Readonly<Record<'x' | 'y' | 'z', string>>>({ x: '', y: '', z: '' }),
    [said, setSaid] = useState<string>()
  const keep = async (): Promise<void> => {
    const key = name.trim(),
      at = `fit.scans.${picked.scan}.points.${key}`
    if (!/^[\p{L}\p{N}][\p{L}\p{N}-]*$/u.test(key)) return setSaid('a name of letters, digits and dashes is wanted, such as strut-left')
    if (taken.includes(key)) return setSaid(`there is a point ${key} already`)
    const onScan = picked.onScan.map((v, i) => ({ path: `${at}.on-scan-${'xyz'[i] as string}`, now: String(Number(v.toPrecision(8))) })),
      inCar = PLACES.map(([axis]) => ({ path: `${at}.${axis}`, now: place[axis].trim() }))
    const empty = PLACES.find(([axis]) => place[axis].trim() === '')
    if (empty) return setSaid(`how far ${empty[1]}? A length such as 450 mm is wanted`)
    const [issue] = await conversion.edit([...onScan, ...inCar], `point ${key} picked on ${picked.scan}`)
    setSaid(issue ? wrongText(issue) : undefined)
    if (!issue) done()
  }
  return (
    <form
      className="add"
      onSubmit={e => {
        e.preventDefault()
        void keep()
      }}
    >
      <p className="small" role="status">
        Picked at <span className="num">{picked.onScan.map(v => Number(v.toPrecision(6))).join(', ')}</span>, as the file counts.
      </p>
      <label htmlFor={`${id}n`}>Call it</label>
      <input id={`${id}n`} value={name} onChange={e => setName(e.target.value)} />
      {PLACES.map(([axis, says]) => (
        <span key={axis}>
          <label htmlFor={`${id}${axis}`}>{says}</label>
          <input id={`${id}${axis}`} value={place[axis]} placeholder="mm" onChange={e => setPlace({ ...place, [axis]: e.target.value })} />
        </span>
      ))}
      <button type="submit" className="main">
        Keep the point
      </button>
      <button type="button" onClick={done}>
        Put it away
      </button>
      {said ? (
        <span className="field wrong">
          <span className="error" role="alert">
            {said}
          </span>
        </span>
      ) : null}
    </form>
  )
}

/** A scan dropped here is kept beside the conversion and named in it. */
function NewScan({ taken }: { readonly taken: readonly string[] }) {
  const { conversion } = useHand(),
    away = useAway(),
    [said, setSaid] = useState<string>()
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return
    setSaid('Reading …')
    const reading = await conversion.readFile(file.name, await bytesOf(file)),
      [fits] = reading.fits
    if (reading.fault || !fits) {
      const { place, what, found, accepted } = reading.fault ?? {
        place: 'content',
        what: 'this is no scan',
        found: reading.name,
        accepted: 'a mesh',
      }
      return setSaid(`${place}: ${what}; found ${found}; accepted ${accepted}`)
    }
    const refused = await conversion.addFile(reading.name, await bytesOf(file))
    if (refused !== undefined) return setSaid(`${reading.name} was not kept: ${refused}`)
    const [issue] = await conversion.edit(
      scanEdits(
        freeName(reading.name, taken),
        reading.name,
        reading.fits.map(f => f.format),
      ),
      `scan ${reading.name}`,
    )
    setSaid(issue ? wrongText(issue) : `${reading.name}: ${fits.says}`)
  }
  if (away) return null
  return (
    <>
      <Drop
        says="Drop a scan of a space here: STL, PLY, OBJ or GLB, at most two million triangles."
        pick="Pick a scan"
        accept=".stl,.ply,.obj,.glb,.gltf"
        take={files => void take(files[0])}
      />
      {said === undefined ? null : <p role="status">{said}</p>}
    </>
  )
}

/** A name for a scan after its file. */
function freeName(file: string, taken: readonly string[]): string {
  const stem =
    file
      .replace(/\.[^.]*$/, '')
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-+|-+$/g, '')
      .toLowerCase() || 'scan'
  for (let n = 1; ; n++) {
    const name = n === 1 ? stem : `${stem}-${n}`
    if (!taken.includes(name)) return name
  }
}
