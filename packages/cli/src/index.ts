export { assessmentJson } from './json.ts'
export { assessModel } from './judged.ts'
export { lookUpsBeside } from './load.ts'
export { run } from './program.ts'
