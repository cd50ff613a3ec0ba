const MINUTE = 60_000,
  HOUR = 60 * MINUTE,
  DAY = 24 * HOUR

const counted = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'} ago`

/** When something last changed, as somebody would say it; `at` ISO 8601, `now` [ms since 1970]. Empty where `at` is no time. */
export function ago(at: string, now: number): string {
  const past = now - Date.parse(at)
  if (Number.isNaN(past)) return ''
  // A clock that is a little ahead is no reason to speak of the future.
  if (past < MINUTE) return 'just now'
  if (past < HOUR) return counted(Math.floor(past / MINUTE), 'minute')
  if (past < DAY) return counted(Math.floor(past / HOUR), 'hour')
  if (past < 30 * DAY) return counted(Math.floor(past / DAY), 'day')
  return `on ${day(at)}`
}

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December']

/** A day as it is written out, by the calendar of this computer; `at` ISO 8601. */
export function day(at: string): string {
  const d = new Date(at)
  return `${d.getDate()} ${MONTHS[d.getMonth()]} ${d.getFullYear()}`
}
