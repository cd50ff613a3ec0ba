const STAMP = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d):(\d\d)(?:\.(\d{1,9}))?(?:Z|([+-])(\d\d):(\d\d))?$/

/**
 * Seconds since 1970-01-01T00:00:00Z of a time stamp such as 2024-05-12T08:30:00.5Z or with a shift like +02:00; undefined when it is none.
 *
 * A stamp without a shift is taken as UTC, as GPX demands. A leap second counts as the second after it.
 * Source: XML Schema Part 2, dateTime (from memory), four-digit years only.
 */
export function secondsOf(stamp: string): number | undefined {
  const parts = STAMP.exec(stamp)
  if (!parts) return undefined
  const [year, month, day, hour, minute, second] = parts.slice(1, 7).map(Number) as [number, number, number, number, number, number]
  const [shiftHours, shiftMinutes] = [Number(parts[9] ?? 0), Number(parts[10] ?? 0)]
  if (hour > 23 || minute > 59 || second > 60 || shiftHours > 14 || shiftMinutes > 59) return undefined
  const date = new Date(0)
  date.setUTCFullYear(year, month - 1, day)
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) return undefined
  const shift = (parts[8] === '-' ? -60 : 60) * (60 * shiftHours + shiftMinutes)
  const whole = date.getTime() / 1000 + 3600 * hour + 60 * minute + second - shift
  const fraction = parts[7] ?? ''
  // Milliseconds are counted in whole ones, so that a stamp written comes back to the last bit.
  return fraction.length > 3 ? whole + Number(`0.${fraction}`) : (1000 * whole + Number(fraction.padEnd(3, '0'))) / 1000
}

/** Time stamp in UTC, to the millisecond. Throws RangeError when it has no four-digit year. */
export function stampOf(seconds: number): string {
  const date = new Date(Math.round(seconds * 1000))
  const year = date.getUTCFullYear()
  if (!(year >= 0 && year <= 9999)) throw new RangeError(`time must lie in the years 0 to 9999, found ${seconds} s`)
  return date.toISOString().replace('.000Z', 'Z')
}
