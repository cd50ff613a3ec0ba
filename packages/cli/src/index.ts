export { lookUpsBeside } from './load.ts'
export { run } from './program.ts'
