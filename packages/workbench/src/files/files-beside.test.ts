import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { readText } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { root, textOf } from '../../../../tests/cars.ts'
import { Desk } from '../desk/desk.ts'
import { fileDatum } from '../file-datum.ts'
import { filePlaces } from './file-places.ts'
import { fileReading } from './file-reading.ts'
import { filesBeside, tripRoutes } from './files-beside.ts'

const track = 'attachments/valley-road.gpx',
  bytes = readFileSync(join(root, 'samples', track)),
  reading = (content: Uint8Array, name = track) => fileReading(name, content, 'metric'),
  places = filePlaces(readText(textOf('badger')).tree)

describe('the files beside a conversion', () => {
  it('are listed with what they hold and where they count', () => {
    const files = filesBeside([reading(bytes)], places)
    expect(files.map(f => [f.name, f.fault, f.usedAt.map(p => p.path)])).toEqual([[track, undefined, ['trips.named.valley-road.track']]])
  })
  it('are drawn where a trip drives along one; one that is missing or broken is named', () => {
    expect(tripRoutes([reading(bytes)], places)).toMatchObject([{ trip: 'valley-road', route: { name: 'Valley road, invented' } }])
    const missing = (...files: Parameters<typeof tripRoutes>[0]): string | undefined => tripRoutes(files, places)[0]?.missing
    expect(missing()).toBe(`«${track}» is not beside the conversion`)
    expect(missing(reading(new TextEncoder().encode('<gpx>')))).toContain('line 1, column 1: the version is not accepted; found none')
    expect(missing(reading(new TextEncoder().encode('charge [%],share [1]\n0,1\n1,1\n')))).toBe(`«${track}» is no track`)
  })
  it('count as soon as they are there, and no longer once they are gone', () => {
    const kept = new Map<string, Uint8Array>(),
      desk = new Desk(textOf('badger'), {
        attachments: (name, format) => {
          const found = kept.get(name)
          return found && fileDatum(found, format)
        },
      })
    const profile = (): boolean => {
      const trip = desk.current().model.trips.named['valley-road']
      return trip !== undefined && 'profile' in trip && 'value' in trip.profile
    }
    expect(profile()).toBe(false)
    kept.set(track, bytes)
    desk.filesChanged([track])
    expect(profile()).toBe(true)
    kept.delete(track)
    desk.filesChanged([])
    expect(profile()).toBe(false)
  })
})
