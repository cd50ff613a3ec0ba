const DAY = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/
const COARSE = /^\d{4}(-(0[1-9]|1[0-2])(-(0[1-9]|[12]\d|3[01]))?)?$/

/** Whether a text is a day of the calendar (2026-05-12) or, where that will do, a month or a year. */
export const isDate = (text: string, coarse = false): boolean => (coarse ? COARSE : DAY).test(text) && inCalendar(text)

/** The thirtieth of February reads as a day, but is none. */
function inCalendar(text: string): boolean {
  const [year = 0, month = 1, day = 1] = text.split('-').map(Number)
  const lengths = [31, year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
  return day <= (lengths[month - 1] ?? 0)
}
