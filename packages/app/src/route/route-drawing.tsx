import type { Line, RouteView } from '@ampwright/workbench'
import { useWidth } from './width.ts'

/** A route: its track north up with a scale bar, its heights over distance, and what both come to. */
export function RouteDrawing({ route, title }: { readonly route: RouteView; readonly title: string }) {
  return (
    <figure className="route">
      <figcaption>
        <b>{title}</b>
      </figcaption>
      <Track route={route} title={title} />
      {route.profile ? (
        <Profile profile={route.profile} title={title} />
      ) : (
        <p className="unanswered">◌ unanswered: the track carries no heights, so no climb is known of it.</p>
      )}
      <table className="figures">
        <tbody>
          {route.facts.map(f => (
            <tr key={f.label}>
              <th scope="row">{f.label}</th>
              <td className="num">{f.text}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </figure>
  )
}

const MARGIN = 26
/** Points of a line as SVG takes them. */
const points = (line: Line, x: (v: number) => number, y: (v: number) => number): string => {
  const out: string[] = []
  for (let i = 0; i < line.length; i += 2) out.push(`${x(line[i]!).toFixed(1)},${y(line[i + 1]!).toFixed(1)}`)
  return out.join(' ')
}

function Track({ route, title }: { readonly route: RouteView; readonly title: string }) {
  const [ref, width] = useWidth<HTMLDivElement>(),
    { box, start, end, bar } = route
  const wide = Math.max(box.right - box.left, 1),
    tall = Math.max(box.high - box.low, 1),
    most = Math.min(width, 420)
  const scale = Math.min((width - 2 * MARGIN) / wide, (most - 2 * MARGIN) / tall),
    height = Math.max(150, tall * scale + 2 * MARGIN + 22)
  const left = (width - wide * scale) / 2,
    x = (v: number): number => left + (v - box.left) * scale,
    y = (v: number): number => height - 22 - MARGIN - (v - box.low) * scale
  const closed = Math.hypot(end[0] - start[0], end[1] - start[1]) * scale < 14
  return (
    <div ref={ref}>
      <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img" aria-label={`${title}. ${route.says}`}>
        {route.pieces.map(p => (
          <polyline key={`${p[0]} ${p[1]}`} className="way" points={points(p, x, y)} />
        ))}
        <circle className="mark" cx={x(start[0])} cy={y(start[1])} r={6} />
        <Lettering x={x(start[0])} y={y(start[1])} width={width} text={closed ? 'start and end' : 'start'} />
        {closed ? null : (
          <>
            <rect className="mark" x={x(end[0]) - 5.5} y={y(end[1]) - 5.5} width={11} height={11} />
            <Lettering x={x(end[0])} y={y(end[1])} width={width} text="end" />
          </>
        )}
        <g className="north" transform={`translate(${width - 18} 12)`}>
          <path d="M0 26 V4 M-5 11 L0 2 L5 11" />
          <text x={0} y={42} textAnchor="middle">
            N
          </text>
        </g>
        <g className="bar-of-scale" transform={`translate(8 ${height - 12})`}>
          <path d={`M0 -5 V0 H${(bar.metres * scale).toFixed(1)} V-5`} />
          <text x={bar.metres * scale + 7} y={2}>
            {bar.text}
          </text>
        </g>
      </svg>
    </div>
  )
}

/** A word beside a mark, on the side where there is room. */
function Lettering({ x, y, width, text }: { readonly x: number; readonly y: number; readonly width: number; readonly text: string }) {
  const right = x < width - 100
  return (
    <text className="lettering" x={right ? x + 11 : x - 11} y={y + 5} textAnchor={right ? 'start' : 'end'}>
      {text}
    </text>
  )
}

function Profile({ profile, title }: { readonly profile: NonNullable<RouteView['profile']>; readonly title: string }) {
  const [ref, width] = useWidth<HTMLDivElement>(),
    { box, line, across, up } = profile
  const [left, right, top, bottom] = [62, 22, 12, 26],
    height = 170,
    wide = Math.max(box.right - box.left, 1),
    tall = Math.max(box.high - box.low, 1)
  const x = (v: number): number => left + ((v - box.left) / wide) * (width - left - right),
    y = (v: number): number => height - bottom - ((v - box.low) / tall) * (height - top - bottom),
    floor = height - bottom
  const way = points(line, x, y)
  return (
    <div ref={ref}>
      <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img" aria-label={`Heights of ${title} over its distance`}>
        {up.map(t => (
          <g key={t.at} className="tick">
            <path d={`M${left} ${y(t.at).toFixed(1)} H${width - right}`} />
            <text x={left - 7} y={y(t.at) + 5} textAnchor="end">
              {t.text}
            </text>
          </g>
        ))}
        {across.map(t => (
          <g key={t.at} className="tick">
            <path d={`M${x(t.at).toFixed(1)} ${floor} v5`} />
            <text x={x(t.at)} y={height - 6} textAnchor="middle">
              {t.text}
            </text>
          </g>
        ))}
        <polygon className="ground" points={`${left},${floor} ${way} ${x(box.right).toFixed(1)},${floor}`} />
        <polyline className="way" points={way} />
      </svg>
    </div>
  )
}
