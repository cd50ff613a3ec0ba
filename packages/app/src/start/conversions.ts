import type { ApiConversionLine, ApiJob, ApiSample } from '@ampwright/server'
import { useCallback, useEffect, useRef, useState } from 'react'
import { Away, api } from '../server/api.ts'
import { allCounts, allSeen, type Counts } from '../server/last-seen.ts'
import { live } from '../server/live.ts'

/** What the start page knows. */
export type Conversions = {
  readonly list: readonly ApiConversionLine[] | undefined
  readonly counts: ReadonlyMap<string, Counts>
  readonly samples: readonly ApiSample[]
  /** The server is away: the list is of what was seen in this browser. */
  readonly away: boolean
  readonly wrong: string | undefined
  /** The jobs of the last hour, oldest first, each as it stands. */
  readonly jobs: ReadonlyMap<string, ApiJob>
  /** Asks for the list anew. */
  readonly renew: () => Promise<readonly ApiConversionLine[]>
}
type Known = Omit<Conversions, 'renew' | 'jobs'>
const NOTHING: Known = { list: undefined, counts: new Map(), samples: [], away: false, wrong: undefined }

/** Changes that come together are asked for once [ms]. */
const TOGETHER = 100

/** The conversions there are, anew with every change anybody makes; with the server away those seen in this browser. */
export function useConversions(): Conversions {
  const [known, setKnown] = useState<Known>(NOTHING),
    [jobs, setJobs] = useState<ReadonlyMap<string, ApiJob>>(new Map()),
    soon = useRef<ReturnType<typeof setTimeout>>(undefined)
  const renew = useCallback(async (): Promise<readonly ApiConversionLine[]> => {
    const next = await asked()
    setKnown(next)
    return next.list ?? []
  }, [])
  useEffect(() => {
    const later = (): void => {
      clearTimeout(soon.current)
      soon.current = setTimeout(() => void renew(), TOGETHER)
    }
    void renew()
    const letGo = live({ hear: later, away: later, job: job => setJobs(had => new Map(had).set(job.id, job)) })
    return () => {
      letGo()
      clearTimeout(soon.current)
    }
  }, [renew])
  return { ...known, jobs, renew }
}

async function asked(): Promise<Known> {
  const counts = new Map((await allCounts()).map(c => [c.id, c]))
  try {
    const [list, samples] = await Promise.all([api.list(), api.samples()])
    return { list, samples, counts, away: false, wrong: undefined }
  } catch (e) {
    if (!(e instanceof Away)) return { ...NOTHING, list: [], wrong: (e as Error).message }
    const seen = await allSeen()
    return {
      list: seen.map(c => ({ id: c.id, name: c.name, revision: c.revision, variant: null, made: c.at, at: c.at, deletedUntil: null })),
      samples: [],
      counts,
      away: true,
      wrong: seen.length
        ? 'The server is away. These cars were seen in this browser; they can be looked at, and not changed.'
        : 'The server does not answer, and no car was seen in this browser yet.',
    }
  }
}
