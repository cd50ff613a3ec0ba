export type * from './api-types.ts'
export { startServer, type Running, type Starting } from './start.ts'
