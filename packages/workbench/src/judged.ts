import { type Assessment, assessed, type Model } from '@ampwright/engine'

export const assessModel = (model: Model, bands: boolean): Assessment => assessed(model, { bands })
