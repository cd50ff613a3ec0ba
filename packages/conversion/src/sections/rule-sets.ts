/** Rule sets that belong to a country or a province, by their short names. */
export const COUNTRIES = ['de', 'fr', 'be', 'it', 'es', 'nl', 'ch', 'gb', 'ie', 'au', 'nz', 'us', 'ca', 'ca-qc', 'jp', 'in', 'za'] as const

/** Every rule set a brief can name. */
export const SETS = ['un', ...COUNTRIES, 'practice'] as const
