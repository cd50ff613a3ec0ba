import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { readText } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { root, textOf } from '../../../../tests/cars.ts'
import { Desk } from '../desk/desk.ts'
import { fileDatum } from '../file-datum.ts'
import { filePlaces } from './file-places.ts'
import { filesBeside, tripRoutes } from './files-beside.ts'

const track = 'attachments/valley-road.gpx',
  bytes = readFileSync(join(root, 'samples', track)),
  places = filePlaces(readText(textOf('badger')).tree)

describe('the files beside a conversion', () => {
  it('are listed with what they hold and where they count', () => {
    const files = filesBeside(new Map([[track, bytes]]), places, 'metric')
    expect(files.map(f => [f.name, f.fault, f.usedAt.map(p => p.path)])).toEqual([[track, undefined, ['trips.named.valley-road.track']]])
  })
  it('are drawn where a trip drives along one; one that is missing or broken is named', () => {
    expect(tripRoutes(new Map([[track, bytes]]), places, 'metric')).toMatchObject([
      { trip: 'valley-road', route: { name: 'Valley road, invented' } },
    ])
    expect(tripRoutes(new Map(), places, 'metric')).toEqual([
      { trip: 'valley-road', track, missing: `«${track}» is not beside the conversion` },
    ])
    const broken = new Map([[track, new TextEncoder().encode('<gpx>')]])
    expect(tripRoutes(broken, places, 'metric')[0]?.missing).toMatch(/^line 1: the version is not accepted/)
  })
  it('count as soon as they are there', () => {
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
    desk.fileAdded(track)
    expect(profile()).toBe(true)
  })
})
