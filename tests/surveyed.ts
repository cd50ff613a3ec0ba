import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Answers, type Model, type Surveys, scanTasks } from '@ampwright/engine'
import { readMesh } from '@ampwright/exchange'
import { carSurvey } from '@ampwright/geometry'

const samples = join(new URL('.', import.meta.url).pathname, '..', 'samples')

/** What is measured of the scans a car names among the files of the samples; undefined where it names none. */
export function surveyed(model: Model): Surveys | undefined {
  if (Object.keys(model.fit.scans).length === 0) return undefined
  return Object.fromEntries(
    scanTasks(model, new Answers(model).ask).map(task => {
      const read = readMesh(readFileSync(join(samples, task.file)))
      if ('issue' in read) throw new Error(read.issue.what)
      return [task.scan, carSurvey(read.mesh, task).survey]
    }),
  )
}
