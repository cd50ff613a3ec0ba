import { type FilePlace, type FileReading, mostBytes, tidyName } from '@ampwright/workbench'
import { useId, useState } from 'react'
import { Link } from 'wouter'
import { RouteDrawing } from '../route/route-drawing.tsx'
import { useInHand } from '../shell/in-hand.ts'
import { bytesOf, Drop } from './drop.tsx'
import { Holds, sizeText } from './holds.tsx'
import { PutToUse } from './put-to-use.tsx'

type Held = { readonly bytes: Uint8Array; readonly reading: FileReading; readonly kept: boolean }

/** A file dropped or picked: looked into first, kept beside the conversion when told to. */
export function NewFile({ names, places }: { readonly names: readonly string[]; readonly places: readonly FilePlace[] }) {
  const { conversion, opened } = useInHand(),
    [held, setHeld] = useState<Held>(),
    [said, setSaid] = useState<string>()
  const look = async (name: string, bytes: Uint8Array): Promise<void> => {
    setSaid(undefined)
    setHeld({ bytes, reading: await conversion.readFile(name, bytes), kept: false })
  }
  const pick = async (file: File | undefined): Promise<void> => {
    if (!file) return
    // What is far too large is not even read in.
    const bytes = file.size > mostBytes(file.name) ? new Uint8Array() : await bytesOf(file)
    if (bytes.length !== file.size)
      return setSaid(`size: the file is too large; found ${sizeText(file.size)}; accepted at most ${sizeText(mostBytes(file.name))}`)
    await look(file.name, bytes)
  }
  const keep = async ({ bytes, reading }: Held): Promise<void> => {
    const refused = await conversion.addFile(reading.name, bytes)
    setSaid(refused === undefined ? undefined : `${reading.name} was not kept: ${refused}`)
    if (refused === undefined) setHeld({ bytes, reading, kept: true })
  }
  return (
    <section aria-label="A new file">
      <Drop
        says="Drop a table (.csv), a track (.gpx) or a scan (.stl, .ply, .obj, .glb) here, or pick it."
        pick="Pick a file"
        accept=".csv,.tsv,.txt,.gpx,.stl,.ply,.obj,.glb,.gltf"
        take={files => void pick(files[0])}
      />
      {said === undefined ? null : (
        <div className="note bad" role="alert">
          {said}
        </div>
      )}
      {held ? (
        <div className={held.reading.fault ? 'note bad' : 'note trial'} role="status">
          <p>
            <b className="num">{held.reading.name}</b> <span className="quiet">{sizeText(held.reading.size)}</span>
            {held.kept ? ' stands beside the conversion now.' : ''}
          </p>
          <Holds file={held.reading} />
          {held.reading.for ? (
            <p>
              <Link href={`/c/${opened.id}/${held.reading.for}`}>To that page</Link>
            </p>
          ) : null}
          {held.reading.fault?.place === 'name' ? (
            <Renamed key={held.reading.name} name={held.reading.name} rename={name => void look(name, held.bytes)} />
          ) : null}
          {!held.kept && held.reading.route ? (
            <RouteDrawing route={held.reading.route} title={held.reading.route.name ?? held.reading.name} />
          ) : null}
          {held.kept ? <PutToUse name={held.reading.name} formats={held.reading.fits.map(f => f.format)} places={places} /> : null}
          <p className="add">
            {held.kept || held.reading.fault ? null : (
              <button type="button" className="main" onClick={() => void keep(held)} disabled={opened.saving === 'server away'}>
                {names.includes(held.reading.name) ? 'Keep it in place of the one there' : 'Keep it beside the conversion'}
              </button>
            )}
            <button type="button" onClick={() => setHeld(undefined)}>
              Put away
            </button>
          </p>
        </div>
      ) : null}
    </section>
  )
}

/** Another name for a file whose own will not do. */
function Renamed({ name, rename }: { readonly name: string; readonly rename: (name: string) => void }) {
  const [to, setTo] = useState(tidyName(name)),
    id = useId()
  return (
    <form
      className="add"
      onSubmit={e => {
        e.preventDefault()
        rename(to.trim())
      }}
    >
      <label htmlFor={id}>Keep it under the name</label>
      <input id={id} value={to} onChange={e => setTo(e.target.value)} />
      <button type="submit">Take this name</button>
    </form>
  )
}
