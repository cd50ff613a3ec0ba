import { describe, expect, it } from 'vitest'
import { proven } from '../../../../tests/proof.ts'
import { diodeConduction, transistorConduction } from './inverter-bridge.ts'

/** Mean over a period of what a device loses that carries a half-wave for a share of the time: the sine of the voltage sets the share. */
function averaged(
  of: 'transistor' | 'diode',
  threshold: number,
  resistance: number,
  amplitude: number,
  m: number,
  powerFactor: number,
): number {
  const n = 20000,
    lag = Math.acos(powerFactor)
  let sum = 0
  for (let k = 0; k < n; k++) {
    const angle = (Math.PI * (k + 0.5)) / n,
      current = amplitude * Math.sin(angle),
      on = (1 + m * Math.sin(angle + lag)) / 2
    sum += (of === 'transistor' ? on : 1 - on) * (threshold * current + resistance * current * current)
  }
  return sum / (2 * n)
}

describe('conduction losses of a bridge', () => {
  it.each([
    [300, 0.8, 0.85],
    [120, 0.3, 0.6],
    [450, 1, 0.95],
    [200, 0.9, -0.8],
  ])('%d A, modulation %d, power factor %d: as integrated over a period', (amplitude, modulation, powerFactor) => {
    for (const [of, card, threshold, resistance] of [
      ['transistor', transistorConduction, 1, 0.002],
      ['diode', diodeConduction, 0.9, 0.0016],
    ] as const) {
      const expected = averaged(of, threshold, resistance, amplitude, modulation, powerFactor),
        obtained = card({ threshold, resistance, amplitude, modulation, powerFactor })
      expect(
        proven({
          domain: 'drive',
          check: `conduction loss of one ${of}, ${amplitude} A, modulation ${modulation}, power factor ${powerFactor}`,
          source: 'integration over a period',
          mark: 'independent program',
          expected,
          obtained,
          tolerance: 1e-6 * expected,
          unit: 'W',
        }),
      ).toBe(true)
    }
  })
})
