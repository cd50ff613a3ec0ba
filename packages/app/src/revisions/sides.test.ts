import { describe, expect, it } from 'vitest'
import { fileName } from './sides.ts'

describe('the file a revision is exported to', () => {
  it.each([
    ['Lapwing roadster', 3, 'lapwing-roadster-r3.conversion.yaml'],
    ['', 1, 'car-r1.conversion.yaml'],
    ['../../etc/passwd', 2, 'etc-passwd-r2.conversion.yaml'],
    ['Möwe 2 ½', 12, 'mowe-2-1-2-r12.conversion.yaml'],
    ['???', 4, 'car-r4.conversion.yaml'],
  ])('of «%s», revision %s, is %s', (car, revision, name) => expect(fileName(car, revision)).toBe(name))
})
