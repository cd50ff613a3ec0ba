import { leastBraking } from './corridor.ts'

const [FOOT, STEEP, FROM] = (leastBraking.card.uses ?? []).map(f => f.value) as [number, number, number]

/** Greatest grip an axle may use at a braking z over weight: the line of least braking solved for grip, k = k₀ + (z − z₀)/b. Source: UN R13-H Annex 5 (from memory). */
export const allowedGrip = (z: number): number => FROM + (z - FOOT) / STEEP
