/** How a rule came out. *accepted* is a failing or marginal finding somebody took responsibility for. */
export type Outcome = 'sound' | 'marginal' | 'failing' | 'unanswered' | 'does not apply' | 'accepted'
export type Side = 'at most' | 'at least'

/**
 * The one place where a found value meets a limit: *failing* when the best value breaks it, *marginal* when the band reaches it.
 *
 * `half` is the half-width of found minus limit. A difference within rounding of the limit (1e-12 of it) counts as on the limit, which holds.
 */
export function judge(found: number, side: Side, limit: number, half: number): 'sound' | 'marginal' | 'failing' {
  const room = side === 'at most' ? limit - found : found - limit
  // Nothing is within rounding of a value without limit.
  const rounding = Number.isFinite(room) ? 1e-12 * Math.max(Math.abs(found), Math.abs(limit)) : 0
  if (room < -rounding) return 'failing'
  return half > 0 && room < half ? 'marginal' : 'sound'
}

/** Whether no value within the ± would keep the limit. */
export function breaksAllOver(found: number, side: Side, limit: number, half: number): boolean {
  return judge(side === 'at most' ? found - half : found + half, side, limit, 0) === 'failing'
}
