export { dataFolder } from '@ampwright/store'
export type * from './api-types.ts'
export { description } from './app.ts'
export { type Running, type Starting, startServer } from './start.ts'
