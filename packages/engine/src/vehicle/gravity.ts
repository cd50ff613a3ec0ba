export { GRAVITY } from '../physics/gravity.ts'
