import { Redirect, Route, Switch } from 'wouter'
import { GuidedPage } from './guided/guided-page.tsx'
import { HandbookAlone } from './handbook/handbook-alone.tsx'
import { ConversionPage } from './shell/conversion-page.tsx'
import { StartPage } from './start/start-page.tsx'

/** The pages there are. */
export function App() {
  return (
    <Switch>
      <Route path="/" component={StartPage} />
      <Route path="/new" component={GuidedPage} />
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
  )
}
