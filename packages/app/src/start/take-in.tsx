import type { ApiConversionLine, ApiImported } from '@ampwright/server'
import { useState } from 'react'
import { Drop } from '../files/drop.tsx'
import { api, Refused, type Unread } from '../server/api.ts'
import { bareName, isBundle, namedText, type TakenIn, takenIn, textOf } from './taken-in.ts'

type Answer =
  | { readonly is: 'asking'; readonly file: string }
  | { readonly is: 'taken'; readonly file: string; readonly told: TakenIn }
  | { readonly is: 'empty'; readonly file: string }
  | { readonly is: 'refused'; readonly file: string; readonly says: string; readonly issues: readonly Unread[] }

/** Takes in a text or a bundle, and tells what became of it. */
export function TakeIn({ renew }: { readonly renew: Renew }) {
  const [answer, setAnswer] = useState<Answer>()
  const take = async ([file]: readonly File[]): Promise<void> => {
    if (file === undefined) return
    setAnswer({ is: 'asking', file: file.name })
    setAnswer(await answered(file, renew))
  }
  return (
    <>
      <Drop
        says="A text or a bundle of a conversion can be dropped here. What was exported from here is merged into what it came from."
        pick="Take in a file"
        accept=".yaml,.yml,.zip"
        take={files => void take(files)}
      />
      {answer?.is === 'empty' ? (
        <Empty
          file={answer.file}
          start={() => {
            const { file } = answer
            setAnswer({ is: 'asking', file })
            void taken(file, () => api.importText(namedText(bareName(file)), bareName(file)), renew).then(setAnswer)
          }}
        />
      ) : answer ? (
        <Told answer={answer} />
      ) : null}
    </>
  )
}

type Renew = () => Promise<readonly ApiConversionLine[]>
async function taken(file: string, send: () => Promise<ApiImported>, renew: Renew): Promise<Answer> {
  try {
    const imported = await send()
    return { is: 'taken', file, told: takenIn(imported, await renew()) }
  } catch (e) {
    return { is: 'refused', file, says: (e as Error).message, issues: e instanceof Refused ? e.issues : [] }
  }
}

async function answered(file: File, renew: Renew): Promise<Answer> {
  try {
    const bytes = new Uint8Array(await file.arrayBuffer()),
      bundle = isBundle(bytes),
      text = bundle ? undefined : textOf(bytes)
    if (!bundle && text === undefined)
      return {
        is: 'refused',
        file: file.name,
        says: 'Nothing was changed: found bytes that are no text; accepted is the text of a conversion (UTF-8) or a bundle (zip).',
        issues: [],
      }
    if (text?.trim() === '') return { is: 'empty', file: file.name }
    const named = bareName(file.name)
    return await taken(file.name, () => (text === undefined ? api.importBundle(file, named) : api.importText(text, named)), renew)
  } catch (e) {
    return { is: 'refused', file: file.name, says: (e as Error).message, issues: e instanceof Refused ? e.issues : [] }
  }
}

/** A file with nothing in it makes a conversion only when somebody wants that. */
function Empty({ file, start }: { readonly file: string; readonly start: () => void }) {
  return (
    <div className="note" role="status">
      <b>{file}</b>: found an empty file, and nothing was made of it.{' '}
      <button type="button" onClick={start}>
        Start {bareName(file)} with nothing filled in
      </button>
    </div>
  )
}

function Told({ answer }: { readonly answer: Exclude<Answer, { readonly is: 'empty' }> }) {
  if (answer.is === 'asking') return <p role="status">Reading {answer.file} …</p>
  if (answer.is === 'refused')
    return (
      <div className="note bad" role="alert">
        <b>{answer.file}</b>: {answer.says}
        <Problems issues={answer.issues} />
      </div>
    )
  const { told } = answer
  return (
    <div className="note" role="status">
      <p>
        <b>{answer.file}</b>: {told.says} <a href={`/c/${told.id}/brief`}>{told.open}</a>
      </p>
      {told.more ? <p>{told.more}</p> : null}
      <Both clashes={told.clashes} />
    </div>
  )
}

/** Every problem of a text with its place, what was found and what is accepted. */
function Problems({ issues }: { readonly issues: readonly Unread[] }) {
  if (issues.length === 0) return null
  return (
    <ul className="faults plain">
      {issues.map(i => (
        <li key={`${i.line} ${i.column} ${i.path} ${i.what}`}>
          line {i.line}
          {i.path ? `, ${i.path}` : ''}: {i.what}; found {i.found || 'nothing'}
          {i.accepted ? `; accepted ${i.accepted}` : ''}
          {i.nearest ? `; nearest is ${i.nearest}` : ''}
        </li>
      ))}
    </ul>
  )
}

function Both({ clashes }: { readonly clashes: TakenIn['clashes'] }) {
  if (clashes.length === 0) return null
  return (
    <div className="scroll">
      <table className="figures narrow">
        <caption className="hidden">What both changed</caption>
        <thead>
          <tr>
            <th scope="col">Changed in both</th>
            <th scope="col">in the file</th>
            <th scope="col">here</th>
          </tr>
        </thead>
        <tbody>
          {clashes.map(c => (
            <tr key={c.path}>
              <th scope="row">{c.path}</th>
              <td>{c.file}</td>
              <td>{c.here}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
