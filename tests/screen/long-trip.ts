import { textOf } from '../cars.ts'
import type { Bench } from './browser.ts'

const STEP = 250,
  LENGTH = 175e3,
  METRES_PER_DEGREE = 111_195
/** A road along the equator, up and down every nine kilometres. */
const track = (): string => {
  const points = Array.from({ length: LENGTH / STEP + 1 }, (_, i) => {
    const height = 200 + 60 * Math.sin((2 * Math.PI * i * STEP) / 9000)
    return `<trkpt lat="0" lon="${((i * STEP) / METRES_PER_DEGREE).toFixed(6)}"><ele>${height.toFixed(1)}</ele></trkpt>`
  })
  return `<?xml version="1.0"?><gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>${points.join('')}</trkseg></trk></gpx>`
}

/** A car that drives for nearly three hours: at ten steps a second a trip of more than a hundred thousand points. Gives its id. */
export async function carOnALongTrip(bench: Bench): Promise<string> {
  const ask = async (path: string, init: RequestInit): Promise<{ id: string; message?: string }> => {
    const answer = await fetch(`${bench.url}${path}`, init),
      said = (await answer.json()) as { id: string; message?: string }
    if (!answer.ok) throw new Error(said.message)
    return said
  }
  const json = { 'content-type': 'application/json' }
  const { id } = await ask('/api/conversions', { method: 'POST', headers: json, body: JSON.stringify({ text: textOf('lapwing') }) })
  await ask(`/api/conversions/${id}/files/far.gpx`, {
    method: 'PUT',
    headers: { 'content-type': 'application/octet-stream', 'x-ampwright': '1' },
    body: track(),
  })
  const now = {
    kind: 'route',
    track: 'far.gpx',
    speed: '62 km/h',
    load: 'driver',
    temperature: '20 °C',
    altitude: '100 m',
    'head-wind': '0 km/h',
    surface: 'dry',
    'cabin-power': '200 W',
    'other-power': '250 W',
    'pack-temperature': '20 °C',
  }
  await ask(`/api/conversions/${id}/edits`, {
    method: 'POST',
    headers: json,
    body: JSON.stringify({ edits: [{ path: 'trips.named.far', was: null, now }] }),
  })
  return id
}
