/** How to read the drawn mouth. */
import type { Look } from './marks.ts';
import { Sign } from './MarkSign.tsx';

const signs: readonly (readonly [Look, string])[] = [
  ['present', 'found'],
  ['half', 'suspected'],
  ['open', 'ruled out'],
  ['before', 'from before'],
  ['work', 'work done'],
  ['plan', 'work to come'],
];
export function MouthKey() {
  return (
    <ul class="mouth-key plain small soft" aria-label="How to read the mouth">
      {signs.map(([look, label]) => (
        <li key={look}>
          <svg viewBox="0 0 20 20" width="18" height="18" aria-hidden="true">
            <g class="sign">
              <Sign look={look} x={10} y={10} r={6.5} />
            </g>
          </svg>
          {label}
        </li>
      ))}
      <li>
        <svg viewBox="0 0 20 20" width="18" height="18" aria-hidden="true">
          <rect class="faint-key" x="3" y="4" width="14" height="12" rx="4" />
        </svg>
        not looked at yet
      </li>
    </ul>
  );
}
