import type { RouteView } from '../route/route-view.ts'
import type { FilePlace } from './file-places.ts'
import type { FileReading } from './file-reading.ts'

/** A file beside a conversion as a screen lists it. */
export type FileBeside = FileReading & { readonly usedAt: readonly FilePlace[] }
/** The track a trip drives along. */
export type TripRoute = { readonly trip: string; readonly track: string; readonly route?: RouteView; readonly missing?: string }

/** Every file beside a conversion with what it holds and where it is in use. */
export const filesBeside = (files: readonly FileReading[], places: readonly FilePlace[]): readonly FileBeside[] =>
  files.map(f => ({ ...f, usedAt: places.filter(p => p.now === f.name) }))

/** The tracks in use by trips, each drawn; a file that is not there or cannot be read is named. */
export const tripRoutes = (files: readonly FileReading[], places: readonly FilePlace[]): readonly TripRoute[] =>
  places.flatMap(({ path, now: track }): TripRoute[] => {
    if (track === undefined || !path.startsWith('trips.named.') || !path.endsWith('.track')) return []
    const trip = path.slice('trips.named.'.length, -'.track'.length),
      file = files.find(f => f.name === track)
    if (!file) return [{ trip, track, missing: `«${track}» is not beside the conversion` }]
    const { route, fault } = file
    if (route) return [{ trip, track, route }]
    return [{ trip, track, missing: fault ? `«${track}», ${fault.place}: ${fault.what}; found ${fault.found}` : `«${track}» is no track` }]
  })
