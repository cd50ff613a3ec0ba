import { MODULE_FACES } from '@ampwright/engine'
import type { Command, Option } from 'commander'
import { Option as Choice } from 'commander'
import type { ScanOptions } from './scan.ts'
import type { Terminal } from './terminal.ts'

const collected = (text: string, before: readonly string[] = []): readonly string[] => [...before, text]
const AXES = ['x', '-x', 'y', '-y', 'z', '-z']

/** Adds the command that reads a scan: what it is, where it lies in the car, what it leaves free. */
export function scanCommand(program: Command, units: Option, t: Terminal, exit: (code: number) => void): void {
  program
    .command('scan')
    .argument('<file>', 'mesh of a scan: STL, OBJ, PLY, glTF or GLB; or a conversion, for the scans it names')
    .description('A scan of a space: what it is, where it lies in the car, what it leaves free, how near a box comes to it.')
    .addOption(new Choice('--unit <unit>', 'unit of the file, where points picked do not tell it').choices(['mm', 'cm', 'm', 'in', 'ft']))
    .addOption(new Choice('--up <axis>', 'axis of the file that points up').choices(AXES))
    .addOption(new Choice('--rear <axis>', 'axis of the file that points to the rear').choices(AXES))
    .option('--mirrored', 'left and right are exchanged in the file')
    .option(
      '--pick <point=place>',
      "a point as in the file and its place in the car: '12.5,3,-8 = 450,320,610 mm'; three times or more",
      collected,
    )
    .option('--from <place>', "where the free space is, such as '300,0,600 mm'")
    .option('--resolution <length>', 'edge of the cubes free space is cut into', '20 mm')
    .option('--within <corners>', "limits of the free space: '-600,-740,140 .. 720,740,820 mm'; otherwise those of the scan")
    .option('--keep <length>', 'how far free space keeps from the scan', '0 mm')
    .option('--box <box>', "gap of a box: '600 x 400 x 250 mm at 300,0,500 mm turned 0,0,30'; as often as wanted", collected)
    .option('--pack <conversion>', 'packs modules of that conversion into the free space, and holds each against the scan')
    .option('--air <length>', 'with --pack: air between two modules', '3 mm')
    .addOption(new Choice('--down <faces...>', 'with --pack: faces a module may lie on').choices([...MODULE_FACES]).default(['bottom']))
    .option('--steps <n>', 'with --pack: how long is searched; the same steps give the same answer', '20000')
    .option('--seed <n>', 'with --pack: another seed searches in another order', '1')
    .option('--out <file>', 'writes the scan as it lies in the car, in metres: a name that ends in .stl or .ply')
    .addOption(units)
    .option('--json', 'machine-readable output')
    .action(async (file: string, o: ScanOptions) => {
      // What reads and measures meshes loads only here.
      const { scan } = await import('./scan.ts')
      exit(scan(file, o, t))
    })
}
