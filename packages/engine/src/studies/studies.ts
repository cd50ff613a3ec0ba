import { againstDonor } from './brief/against-donor.ts'
import { outline } from './brief/outline.ts'
import { coastDown } from './donor/coast-down.ts'
import { ledger } from './donor/ledger.ts'
import { loadCases } from './donor/load-cases.ts'
import { rolling } from './donor/rolling.ts'
import { room } from './donor/room.ts'
import { seats } from './donor/seats.ts'
import { stance } from './donor/stance.ts'
import { train } from './donor/train.ts'
import { weighed } from './donor/weighed.ts'
import { acceleration } from './drive/acceleration.ts'
import { batteryPull } from './drive/battery-pull.ts'
import { climb } from './drive/climb.ts'
import { driveUnits } from './drive/drive-units.ts'
import { envelopes } from './drive/envelopes.ts'
import { gears } from './drive/gears.ts'
import { hillStart } from './drive/hill-start.ts'
import { ratios } from './drive/ratios.ts'
import { topSpeed } from './drive/top-speed.ts'
import { packModel } from './pack/pack-model.ts'
import type { Study } from './study.ts'

/** The studies behind the headline, answered first. */
export const HEADLINE: readonly Study<unknown>[] = [ledger, loadCases]

/** Every study, in the order of the job. A test fails when one is missing here. */
export const STUDIES: readonly Study<unknown>[] = [outline, againstDonor, weighed, rolling, coastDown, ledger, stance, loadCases, room, seats, train, ratios, envelopes, driveUnits, hillStart, packModel, batteryPull, acceleration, topSpeed, climb, gears]
