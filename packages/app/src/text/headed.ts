/** A label at the head of a line. */
export const headed = (label: string): string => label.replace(/^\p{Ll}/u, c => c.toUpperCase())
