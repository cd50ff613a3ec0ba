import { hillStart } from './drive/hill-start.ts'
import type { Rule } from './rule.ts'

/** Every rule, in the order of the job. A test fails when one is missing here. */
export const RULES: readonly Rule[] = [hillStart]
