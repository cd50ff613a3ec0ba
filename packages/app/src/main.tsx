import '@fontsource-variable/atkinson-hyperlegible-next/wght.css'
import '@fontsource-variable/atkinson-hyperlegible-mono/wght.css'
import './look/tokens.css'
import './look/charts.css'
import './look/fields.css'
import './look/findings.css'
import './look/guided.css'
import './look/handbook.css'
import './look/parts.css'
import './look/page.css'
import './look/survey.css'
import './look/revisions.css'
import './look/letter.css'
import './look/scene.css'
import './look/shelf.css'
import './look/start.css'
import './look/tour.css'
import './look/print.css'
import './look/bench.css'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './app.tsx'

createRoot(document.getElementById('app') as HTMLElement).render(
  <StrictMode>
    <App />
  </StrictMode>,
)

if ('serviceWorker' in navigator && import.meta.env.PROD) void navigator.serviceWorker.register('/away.js')
