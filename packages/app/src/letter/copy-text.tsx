import { useState } from 'react'

/** Copies a text; where the browser lets no page copy, it is shown to be copied by hand. */
export function CopyText({ text, disabled }: { readonly text: () => Promise<string | undefined>; readonly disabled: boolean }) {
  const [state, setState] = useState<'' | 'copied' | { readonly by: string }>('')
  const copy = async (): Promise<void> => {
    const t = (await text()) ?? ''
    try {
      await navigator.clipboard.writeText(t)
      setState('copied')
    } catch {
      setState({ by: t })
    }
  }
  return (
    <>
      <button type="button" disabled={disabled} onClick={() => void copy()}>
        Copy as text
      </button>
      <span role="status" className="quiet small">
        {state === 'copied' ? 'Copied.' : state === '' ? '' : 'This browser lets no page copy: copy it from the field.'}
      </span>
      {typeof state === 'object' ? (
        <textarea
          className="by-hand"
          readOnly
          value={state.by}
          rows={10}
          aria-label="The letter as text"
          onFocus={e => e.target.select()}
        />
      ) : null}
    </>
  )
}
