/**
 * How often a random test runs: the full count in the long run (`npm run test:long` sets AMPWRIGHT_LONG=1), a twentieth of it otherwise.
 */
export function runs(full: number): number {
  return process.env.AMPWRIGHT_LONG === '1' ? full : Math.ceil(full / 20)
}
