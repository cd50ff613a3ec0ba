import { useState } from 'react'

/** A place to drop files on, or to pick them with a button. */
export function Drop({
  says,
  pick,
  accept,
  several = false,
  take,
}: {
  /** What may be dropped. */
  readonly says: string
  /** What the button is called. */
  readonly pick: string
  readonly accept: string
  readonly several?: boolean
  readonly take: (files: readonly File[]) => void
}) {
  const [over, setOver] = useState(false)
  const got = (files: FileList | null): void => {
    setOver(false)
    const list = [...(files ?? [])]
    if (list.length) take(several ? list : list.slice(0, 1))
  }
  return (
    <div
      className={`drop${over ? ' over' : ''}`}
      onDragOver={e => {
        e.preventDefault()
        setOver(true)
      }}
      onDragLeave={() => setOver(false)}
      onDrop={e => {
        e.preventDefault()
        got(e.dataTransfer.files)
      }}
    >
      <span>{says}</span>
      <label className="button">
        {pick}
        <input
          className="hidden"
          type="file"
          accept={accept}
          multiple={several}
          onChange={e => {
            got(e.target.files)
            // The same file may be picked again once it was mended.
            e.target.value = ''
          }}
        />
      </label>
    </div>
  )
}

export const bytesOf = async (file: File): Promise<Uint8Array> => new Uint8Array(await file.arrayBuffer())
