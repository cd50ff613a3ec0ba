export * from './air.ts'
