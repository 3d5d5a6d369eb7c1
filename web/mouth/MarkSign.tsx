/** The signs on the drawn mouth: told apart by their form, never by colour. */
import type { Look, Mark } from './marks.ts';

const words: Readonly<Record<Look, string>> = {
  present: 'found',
  half: 'suspected',
  open: 'ruled out',
  before: 'from before',
  work: 'work done',
  plan: 'work not done, or something else said',
  unseen: 'not examined',
};
/** What a mark says, for a screen reader: "2 items, found, 1 question". */
export function signWords({ look, count, doubts }: Mark): string {
  return [count > 1 ? `${count} items` : '', look ? words[look] : '', doubts ? `${doubts} ${doubts === 1 ? 'question' : 'questions'}` : '']
    .filter(Boolean)
    .join(', ');
}

const radius = (room: number): number => Math.max(5, room * 0.68);
export function MarkSign({ mark, x, y, room }: { mark: Mark; x: number; y: number; room: number }) {
  if (!mark.look) return null;
  return (
    <g class={`sign ${mark.look}`} aria-hidden="true">
      <Sign look={mark.look} x={x} y={y} r={radius(room)} />
    </g>
  );
}
/** How many items stand at a place, where it is more than one; written over the drawing, beside the sign. */
export function Count({ mark, at, room }: { mark: Mark; at: { x: number; y: number }; room: number }) {
  const r = radius(room);
  return mark.count > 1 ? (
    <text class="count" x={at.x + r + 3} y={at.y - r + 1} dy="0.36em">
      {mark.count}
    </text>
  ) : null;
}

/** One sign alone, for the mouth and for the key beneath it. */
export function Sign({ look, x, y, r }: { look: Look; x: number; y: number; r: number }) {
  if (look === 'present') return <circle class="solid" cx={x} cy={y} r={r} />;
  if (look === 'open') return <circle class="hollow" cx={x} cy={y} r={r - 1} />;
  if (look === 'half')
    return (
      <>
        <circle class="hollow" cx={x} cy={y} r={r - 1} />
        <path class="solid" d={`M${x} ${y - r}A${r} ${r} 0 0 0 ${x} ${y + r}Z`} />
      </>
    );
  if (look === 'before')
    return (
      <>
        <circle class="hollow thin" cx={x} cy={y - 2} r={r - 2} />
        <path class="stroke" d={`M${x - r} ${y + r}H${x + r}`} />
      </>
    );
  if (look === 'work') return <rect class="solid" x={x - r * 0.85} y={y - r * 0.85} width={r * 1.7} height={r * 1.7} rx={1.5} />;
  if (look === 'plan') return <rect class="hollow" x={x - r * 0.75} y={y - r * 0.75} width={r * 1.5} height={r * 1.5} rx={1.5} />;
  return <path class="stroke" d={`M${x - r} ${y}H${x + r}`} />;
}
