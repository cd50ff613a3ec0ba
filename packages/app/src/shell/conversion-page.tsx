import { Suspense, useEffect, useMemo, useState } from 'react'
import { OpenConversion } from '../open-conversion.ts'
import { LATER } from '../stages/later.ts'
import { LaterPage } from '../stages/later-page.tsx'
import { PAGES } from '../stages/pages.ts'
import { StagePage } from '../stages/stage-page.tsx'
import { TourNotes } from '../tour/tour-notes.tsx'
import { WorkingDialog } from '../working/working-dialog.tsx'
import { Bar } from './bar.tsx'
import { Headline } from './headline.tsx'
import { InHandContext } from './in-hand.ts'
import { JobLine } from './job-line.tsx'
import { MORE_PAGES } from './more-pages.tsx'
import { Notices } from './notices.tsx'

/** One conversion: the job at the side, the headline above, a page of it in the middle. */
export function ConversionPage({ id, page }: { readonly id: string; readonly page: string }) {
  const [conversion, setConversion] = useState<OpenConversion>()
  const [working, setWorking] = useState<string>()
  useEffect(() => {
    const opened = new OpenConversion(id)
    setConversion(opened)
    return () => opened.close()
  }, [id])
  const hand = useMemo(() => (conversion ? { conversion, openWorking: setWorking } : null), [conversion])
  if (hand === null) return <main>Opening …</main>
  return (
    <InHandContext value={hand}>
      <a className="skip" href="#main">
        To the page itself
      </a>
      <div className="frame">
        <JobLine id={id} page={page} />
        <div>
          <Headline />
          <main id="main" tabIndex={-1}>
            <Bar />
            <Notices />
            <TourNotes id={id} page={page} />
            <Page name={page} />
          </main>
        </div>
      </div>
      {working === undefined ? null : <WorkingDialog name={working} close={() => setWorking(undefined)} />}
    </InHandContext>
  )
}

function Page({ name }: { readonly name: string }) {
  const stage = PAGES[name],
    More = MORE_PAGES[name]?.page,
    later = LATER.find(l => l.slug === name)
  if (stage) return <StagePage key={name} page={stage} />
  if (later) return <LaterPage later={later} />
  return More ? (
    <Suspense fallback={<p className="quiet">Opening …</p>}>
      <More />
    </Suspense>
  ) : (
    <p>There is no page of this name.</p>
  )
}
