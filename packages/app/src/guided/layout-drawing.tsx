/** Where the engine sits and which wheels it drives, seen from above, the front to the left. */
export function LayoutDrawing({ engine, driven }: { readonly engine: string; readonly driven: string }) {
  const front = driven === 'front' || driven === 'all' || driven === 'part-time 4x4',
    rear = driven === 'rear' || driven === 'all' || driven === 'part-time 4x4'
  const x = engine === 'rear' ? 150 : engine === 'mid' ? 118 : engine.startsWith('longitudinal') ? 26 : 30,
    across = !engine.startsWith('longitudinal')
  const part = driven === 'part-time 4x4' ? '5 4' : undefined
  return (
    <svg
      viewBox="0 0 200 90"
      className="layout"
      role="img"
      aria-label={[engine && `Engine ${engine}`, driven && `driven: ${driven}`].filter(Boolean).join(', ')}
    >
      <rect x="6" y="12" width="188" height="66" rx="18" fill="none" stroke="var(--line)" strokeWidth="2" />
      {[
        [40, 8, front],
        [40, 70, front],
        [152, 8, rear],
        [152, 70, rear],
      ].map(([wx, wy, on]) => (
        <rect
          key={`${String(wx)} ${String(wy)}`}
          x={Number(wx) - 13}
          y={Number(wy)}
          width="26"
          height="12"
          rx="3"
          fill={on ? 'var(--ink)' : 'none'}
          stroke="var(--ink)"
          strokeWidth="1.5"
        />
      ))}
      {front ? <path d="M40 20V70" stroke="var(--ink)" strokeWidth="2" strokeDasharray={part} /> : null}
      {rear ? <path d="M152 20V70" stroke="var(--ink)" strokeWidth="2" /> : null}
      {(front && rear) || (rear && x < 100) || (front && x > 100) ? (
        <path
          d={`M${Math.min(x + 14, 40)} 45H152`}
          stroke="var(--ink)"
          strokeWidth="2"
          strokeDasharray={front && rear ? part : undefined}
        />
      ) : null}
      <rect
        x={across ? x - 9 : x - 12}
        y={across ? 29 : 36}
        width={across ? 20 : 38}
        height={across ? 32 : 18}
        rx="3"
        fill="var(--act-soft)"
        stroke="var(--act)"
        strokeWidth="2"
      />
    </svg>
  )
}
