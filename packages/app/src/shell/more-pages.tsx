import { type ComponentType, lazy } from 'react'

// Each page comes when it is first opened.
const CoastDownPage = lazy(async () => ({ default: (await import('../coast-down/coast-down-page.tsx')).CoastDownPage }))
const FilesPage = lazy(async () => ({ default: (await import('../files/files-page.tsx')).FilesPage }))
const FindingsPage = lazy(async () => ({ default: (await import('../findings/findings-page.tsx')).FindingsPage }))
const HandbookPage = lazy(async () => ({ default: (await import('../handbook/handbook-page.tsx')).HandbookPage }))
const LetterPage = lazy(async () => ({ default: (await import('../letter/letter-page.tsx')).LetterPage }))
const ModulesPage = lazy(async () => ({ default: (await import('../modules/modules-page.tsx')).ModulesPage }))
const PartsPage = lazy(async () => ({ default: (await import('../parts/parts-page.tsx')).PartsPage }))
const RevisionsPage = lazy(async () => ({ default: (await import('../revisions/revisions-page.tsx')).RevisionsPage }))
const SurveyPage = lazy(async () => ({ default: (await import('../survey/survey-page.tsx')).SurveyPage }))

/** Pages of a conversion that are no stage of the job: by the last part of their address, in the order of the list at the side. */
export const MORE_PAGES: Readonly<Record<string, { readonly title: string; readonly page: ComponentType }>> = {
  findings: { title: 'All findings', page: FindingsPage },
  survey: { title: 'Survey sheet', page: SurveyPage },
  letter: { title: 'Enquiry letter', page: LetterPage },
  parts: { title: 'Parts', page: PartsPage },
  modules: { title: 'Salvaged modules', page: ModulesPage },
  'coast-down': { title: 'Coast-down', page: CoastDownPage },
  files: { title: 'Files and routes', page: FilesPage },
  revisions: { title: 'Revisions and comparing', page: RevisionsPage },
  handbook: { title: 'Handbook', page: HandbookPage },
}
