import { useState } from 'react'
import { useHand } from '../shell/in-hand.ts'
import type { PackedBox } from './packed-meshes.ts'
import type { Packing } from './scan-thread.ts'

/** Packs modules of the conversion into the free space of a scan, ever better while one waits, and shows them. */
export function Packer({ scan, show }: { readonly scan: string; readonly show: (boxes: readonly PackedBox[]) => void }) {
  const { scans } = useHand().conversion,
    [so, setSo] = useState<Packing & { readonly nearestText?: string }>(),
    [said, setSaid] = useState<string>()
  const pack = async (): Promise<void> => {
    setSaid(undefined)
    show([])
    const found = await scans.pack(scan, setSo)
    if (typeof found === 'string') {
      setSo(undefined)
      return setSaid(found)
    }
    setSo(found)
    show(found.boxes ?? [])
  }
  const at = so && !so.done
  return (
    <>
      <button type="button" onClick={at ? scans.stopPacking : () => void pack()}>
        {at ? 'Stop, and keep what is found' : 'Pack modules into its free space'}
      </button>
      {so ? (
        <p role="status">
          {so.placed} modules of at most {so.bound}, upright, 3 mm apart, after {so.seconds.toFixed(1)} s.{' '}
          {so.done
            ? so.touching === 0
              ? `Held against every triangle of the scan: none touches it${so.nearestText === undefined ? '' : `, the nearest comes within ${so.nearestText}`}.`
              : `${so.touching} of them run into the scan.`
            : 'Searching …'}
        </p>
      ) : null}
      {said === undefined ? null : <p role="alert">{said}</p>}
    </>
  )
}
