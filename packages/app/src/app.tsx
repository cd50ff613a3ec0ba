import { lazy, Suspense } from 'react'
import { Redirect, Route, Switch } from 'wouter'
import { StartPage } from './start/start-page.tsx'

const GuidedPage = lazy(async () => ({ default: (await import('./guided/guided-page.tsx')).GuidedPage }))
const HandbookAlone = lazy(async () => ({ default: (await import('./handbook/handbook-alone.tsx')).HandbookAlone }))
const ShelfPage = lazy(async () => ({ default: (await import('./shelf/shelf-page.tsx')).ShelfPage }))
const ConversionPage = lazy(async () => ({ default: (await import('./shell/conversion-page.tsx')).ConversionPage }))

/** The pages there are; each comes when it is first opened. */
export function App() {
  return (
    <Suspense fallback={<main>Opening …</main>}>
      <Switch>
        <Route path="/" component={StartPage} />
        <Route path="/new" component={GuidedPage} />
        <Route path="/shelf" component={ShelfPage} />
        <Route path="/c/:id">{({ id }) => <Redirect to={`/c/${id}/brief`} replace />}</Route>
        <Route path="/handbook/:formula?">{({ formula }) => <HandbookAlone formula={formula} />}</Route>
        <Route path="/c/:id/:page/*?">{({ id, page }) => <ConversionPage key={id} id={id} page={page} />}</Route>
        <Route>
          <main>
            <h1>There is no page here</h1>
            <p>
              <a href="/">To the conversions</a>
            </p>
          </main>
        </Route>
      </Switch>
    </Suspense>
  )
}
