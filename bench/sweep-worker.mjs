// One thread of the sweep, on the built packages: the demo with another axle ratio, number of modules and motor torque, again and again.
import { readFileSync } from 'node:fs'
import { parentPort, workerData } from 'node:worker_threads'
import { lookUpsBeside } from '@ampwright/cli'
import { readConversion } from '@ampwright/conversion'
import { Answers, STUDIES } from '@ampwright/engine'

const { file, folder } = workerData
const { model } = readConversion(readFileSync(file, 'utf8'), { lookUps: lookUpsBeside(folder) })
const studies = ['load', 'hill-start', 'acceleration'].map(id => STUDIES.find(s => s.id === id))
const scaled = (fact, by) => ({ ...fact, value: fact.value * by })

function variant(i) {
  const unit = model.drive.units.main
  return {
    ...model,
    donor: { ...model.donor, finalDrive: scaled(model.donor.finalDrive, 0.8 + (0.4 * (i % 25)) / 24) },
    pack: { ...model.pack, modulesInSeries: { ...model.pack.modulesInSeries, value: 12 + (Math.floor(i / 25) % 8) } },
    drive: { ...model.drive, units: { main: { ...unit, motor: { ...unit.motor, peakTorque: scaled(unit.motor.peakTorque, 0.7 + (0.6 * (Math.floor(i / 200) % 50)) / 49) } } } },
  }
}
function work(from, to) {
  let sum = 0
  for (let i = from; i < to; i++) {
    const answers = new Answers(variant(i))
    for (const study of studies) answers.ask(study)
    for (const f of answers.of(studies[2]).figures) if (f.id.startsWith('acceleration.time') && Number.isFinite(f.value)) sum += f.value
  }
  return sum
}
function memory() {
  globalThis.gc()
  return process.memoryUsage().heapUsed
}
parentPort.on('message', asked => parentPort.postMessage(asked === 'memory' ? memory() : work(asked.from, asked.to)))
