// Writes a made scan of an engine bay, to try things on: node --conditions source --import tsx scripts/scan.ts FILE.stl [triangles] [seed]. A name that ends in
// .ply gives PLY. What was picked on it is printed as the command line takes it.
import { writeFileSync } from 'node:fs'
import { writePly, writeStl } from '@ampwright/exchange'
import { engineBay } from '../tests/scans/engine-bay.ts'

const [file, triangles = '1000000', seed = '1'] = process.argv.slice(2)
if (!file || !/\.(stl|ply)$/.test(file)) {
  console.error('scan: a file that ends in .stl or .ply is wanted, found ' + (file ?? 'nothing'))
  process.exit(2)
}
const { scan, picks, inside, within } = engineBay({ seed: Number(seed), triangles: Number(triangles) })
writeFileSync(file, file.endsWith('.ply') ? writePly(scan) : writeStl(scan))
const millimetres = (place: readonly number[]): string => place.map(x => Math.round(1000 * x)).join(',')
const raw = (place: readonly number[]): string => place.map(x => x.toFixed(1)).join(',')
console.log(`${file}: ${scan.triangles.length / 3} triangles`)
console.log(
  [
    `ampwright scan ${file}`,
    ...picks.map(p => `--pick '${raw(p.onScan)} = ${millimetres(p.inCar)} mm'`),
    `--from '${millimetres(inside)} mm'`,
    `--resolution '15 mm'`,
    `--within '${millimetres(within.low)} .. ${millimetres(within.high)} mm'`,
  ].join(' '),
)
