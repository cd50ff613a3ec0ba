import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Answers, meshesTask, type Model, scanTasks } from '@ampwright/engine'
import { type MeshFile, readMesh } from '@ampwright/exchange'
import { carMeshes, carSurvey } from '@ampwright/geometry'

const samples = join(new URL('.', import.meta.url).pathname, '..', 'samples')

/** What is measured of the scans and meshes a car names among the files of the samples; nothing where it names none. */
export function surveyed(model: Model): Pick<Model, 'surveys' | 'meshes'> {
  const { ask } = new Answers(model),
    meshes = hasMesh(model) ? carMeshes(meshesTask(model, ask), ({ file }) => read(file)) : undefined,
    scans = Object.keys(model.fit.scans).length > 0 ? scanTasks(model, ask) : undefined
  return {
    ...(meshes ? { meshes: meshes.survey } : {}),
    ...(scans
      ? { surveys: Object.fromEntries(scans.map(task => [task.scan, carSurvey(read(task.file).mesh, task, meshes?.parts).survey])) }
      : {}),
  }
}

/** Most cars name no mesh: then nothing is asked of them. */
const hasMesh = (model: Model): boolean => Object.values(model.fit.bodies).some(b => b && 'value' in b.mesh)
function read(file: string): MeshFile {
  const found = readMesh(readFileSync(join(samples, file)))
  if ('issue' in found) throw new Error(found.issue.what)
  return found
}
