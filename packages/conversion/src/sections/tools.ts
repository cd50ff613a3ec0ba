// What measuring takes, where several sections ask for the same: tools, accuracies and times are common practice.
export const TAPE = { tool: 'tape', accuracy: '± 5 mm', minutes: 10 }
export const WEIGH = { tool: 'hanging scale', accuracy: '± 0.5 kg', minutes: 5 }
export const LOOK = { tool: 'look at the car', accuracy: 'exact', minutes: 5 }
export const PART = { tool: 'datasheet or marking of the part', accuracy: 'as stated', minutes: 15 }
export const OFFER = { tool: 'written offer', accuracy: 'as stated', minutes: 15 }
