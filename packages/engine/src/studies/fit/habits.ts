/** What the trade leaves free, as the rules on fitting take it. */
export { CLEARANCE_HABITS } from '../../fitting/clearance-habits.ts'
