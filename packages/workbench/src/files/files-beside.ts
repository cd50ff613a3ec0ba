import type { System } from '@ampwright/conversion'
import { readGpx } from '@ampwright/exchange'
import { type RouteView, routeView } from '../route/route-view.ts'
import type { FilePlace } from './file-places.ts'
import { type FileReading, fileReading } from './file-reading.ts'

/** A file beside a conversion as a screen lists it. */
export type FileBeside = FileReading & { readonly usedAt: readonly FilePlace[] }
/** The track a trip drives along. */
export type TripRoute = { readonly trip: string; readonly track: string; readonly route?: RouteView; readonly missing?: string }

/** Every file beside a conversion with what it holds and where it is in use. */
export const filesBeside = (files: ReadonlyMap<string, Uint8Array>, places: readonly FilePlace[], system: System): readonly FileBeside[] =>
  [...files].map(([name, bytes]) => ({ ...fileReading(name, bytes, system), usedAt: places.filter(p => p.now === name) }))

/** The tracks in use by trips, each drawn; a file that is not there or cannot be read is named. */
export const tripRoutes = (files: ReadonlyMap<string, Uint8Array>, places: readonly FilePlace[], system: System): readonly TripRoute[] =>
  places.flatMap(({ path, now: track }): TripRoute[] => {
    if (track === undefined || !path.startsWith('trips.named.') || !path.endsWith('.track')) return []
    const trip = path.slice('trips.named.'.length, -'.track'.length),
      bytes = files.get(track)
    if (!bytes) return [{ trip, track, missing: `«${track}» is not beside the conversion` }]
    const read = readGpx(bytes),
      route = 'gpx' in read ? routeView(read.gpx.track, system) : undefined
    if (route) return [{ trip, track, route }]
    return [
      {
        trip,
        track,
        missing: 'issue' in read ? `line ${read.issue.line}: ${read.issue.what}; found ${read.issue.found}` : 'the track is no line',
      },
    ]
  })
