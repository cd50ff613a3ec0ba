const KEY = 'ampwright.tour'

/** Whether the notes of the demo are put away in this browser. */
export const isPutAway = (): boolean => localStorage.getItem(KEY) === 'away'
export function putAway(away: boolean): void {
  if (away) localStorage.setItem(KEY, 'away')
  else localStorage.removeItem(KEY)
}
