import type { ComponentType } from 'react'
import { CoastDownPage } from '../coast-down/coast-down-page.tsx'
import { FilesPage } from '../files/files-page.tsx'
import { FindingsPage } from '../findings/findings-page.tsx'
import { HandbookPage } from '../handbook/handbook-page.tsx'
import { LetterPage } from '../letter/letter-page.tsx'
import { ModulesPage } from '../modules/modules-page.tsx'
import { PartsPage } from '../parts/parts-page.tsx'
import { RevisionsPage } from '../revisions/revisions-page.tsx'
import { SurveyPage } from '../survey/survey-page.tsx'

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
