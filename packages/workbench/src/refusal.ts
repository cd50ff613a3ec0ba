/** Wrong use or an unreadable file: one message for the person, never a stack trace. */
export class Refusal extends Error {}
