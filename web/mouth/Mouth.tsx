/**
 * The drawn mouth, facing the horse. It shows that something was said at a place and how it stands; the words say what.
 * Props: `draft`; `now` the keys just spoken of; `focus` the key whose words are open; `onPick(key)` on touch or focus.
 */
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Draft } from '../../parser/contract/draft.ts';
import { permanentTeeth } from '../../parser/lexicon/teeth.ts';
import { size } from './anatomy.ts';
import { extraTeeth, lookedAt, marksOf, saidUnseen, type Mark } from './marks.ts';
import { Count, MarkSign, signWords } from './MarkSign.tsx';
import { nameOf, rowOf, type PlaceKey } from './places.ts';
import { next, type Direction } from './roving.ts';
import { backdrop, captions, regionSpots, rowSpots } from './surroundings.ts';
import { drawnSpaces, drawTooth, type DrawnTooth } from './shape.ts';
import './mouth.css';

const usual = permanentTeeth.map(drawTooth);
const arrows: Readonly<Record<string, Direction>> = { ArrowUp: 'up', ArrowDown: 'down', ArrowLeft: 'left', ArrowRight: 'right' };
/** How many times larger a place is drawn when it is near. */
const closeUp = 2.6;
const room = (drawn: DrawnTooth): number => Math.min(drawn.reach, 11);
const nothing: Mark = { look: null, count: 0, doubts: 0 };

/** The part of a draft that the mouth shows. */
export type Shown = Pick<Draft, 'items' | 'doubts'>;
export interface MouthProps {
  readonly draft: Shown | null;
  readonly now?: readonly PlaceKey[];
  readonly focus?: PlaceKey | null;
  readonly onPick?: (key: PlaceKey) => void;
  readonly label?: string;
}

export function Mouth({ draft, now = [], focus = null, onPick, label = 'The mouth, facing the horse' }: MouthProps) {
  const marks = useMemo(() => marksOf(draft), [draft]);
  const seen = useMemo(() => lookedAt(draft?.items ?? []), [draft]);
  const unseen = useMemo(() => saidUnseen(draft?.items ?? []), [draft]);
  const extra = useMemo(() => extraTeeth(draft).map(drawTooth), [draft]);
  const [stop, setStop] = useState<PlaceKey>('101');
  const [near, setNear] = useState<PlaceKey | null>(null);
  const root = useRef<SVGSVGElement>(null);
  const tab = focus ?? stop;

  useEffect(() => {
    if (focus) setStop(focus);
  }, [focus]);

  const spots = useMemo(() => [...usual, ...extra, ...drawnSpaces, ...regionSpots, ...rowSpots], [extra]);
  const pick = (key: PlaceKey): void => {
    setStop(key);
    onPick?.(key);
  };
  const onKey = (event: KeyboardEvent): void => {
    const direction = arrows[event.key];
    const from = (event.target as Element).closest('[data-key]')?.getAttribute('data-key');
    if (!from) return;
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      pick(from);
      return;
    }
    if (!direction) return;
    event.preventDefault();
    const to = next(spots, from, direction);
    root.current?.querySelector<SVGElement>(`[data-key="${to}"]`)?.focus();
  };
  /** On a small screen a touch brings its place near, so that the next touch has a thumb's room. */
  const onTouch = (key: PlaceKey): void => {
    if (matchMedia('(max-width: 600px)').matches && /^\d/.test(key)) setNear(key);
    pick(key);
  };

  const forward = new Set(now.map((key) => (/^\d/.test(key) ? rowOf(key.slice(0, 3)) : key.startsWith('row:') ? key.slice(4) : null)));
  const spot = (key: PlaceKey, mark: Mark, said = ''): Record<string, unknown> =>
    onPick
      ? {
          'data-key': key,
          role: 'button',
          tabIndex: key === tab ? 0 : -1,
          'aria-label': [nameOf(key), signWords(mark), said].filter(Boolean).join(', '),
          'aria-pressed': focus === key,
          onFocus: () => pick(key),
          onClick: () => onTouch(key),
        }
      : { 'data-key': key };

  const of = (key: PlaceKey): Mark => marks.get(key) ?? nothing;
  const lit = (key: PlaceKey): string => `${now.includes(key) ? ' now' : ''}${focus === key ? ' picked' : ''}`;
  const state = (key: PlaceKey): 'unseen' | 'seen' | 'faint' =>
    unseen.has(key) ? 'unseen' : seen.has(key) || of(key).look ? 'seen' : 'faint';
  const teeth = [...usual, ...extra];
  const tooth = (drawn: DrawnTooth) => {
    const { key } = drawn;
    const row = rowOf(key);
    return (
      <g
        key={key}
        class={`spot tooth ${drawn.kind} ${state(key)}${lit(key)}${row && forward.has(row) ? ' forward' : ''}`}
        {...spot(key, of(key), state(key) === 'faint' ? 'not looked at yet' : '')}
      >
        <path class="touch" d={drawn.touch} />
        <path class="halo" d={drawn.outline} />
        <path class="outline" d={drawn.outline} />
        {drawn.folds.map((d, i) => (
          <path key={i} class="fold" d={d} />
        ))}
        <MarkSign mark={of(key)} x={drawn.at.x} y={drawn.at.y} room={room(drawn)} />
      </g>
    );
  };
  const middle = near && spots.find((s) => s.key === near)?.at;
  return (
    <div class={`mouth${middle ? ' near' : ''}`}>
      <svg
        ref={root}
        viewBox={`0 0 ${size.width} ${size.height}`}
        role={onPick ? 'group' : 'img'}
        aria-label={label}
        onKeyDown={onPick ? onKey : undefined}
      >
        <g
          class="scene"
          style={
            middle
              ? {
                  transform: `translate(${size.width / 2}px, ${size.height / 2}px) scale(${closeUp}) translate(${-middle.x}px, ${-middle.y}px)`,
                }
              : undefined
          }
        >
          <g class="backdrop" aria-hidden="true">
            {backdrop.map(({ d, as }) => (
              <path key={d} class={as} d={d} />
            ))}
            {captions.map(({ text, x, y, as }) => (
              <text key={text + x} class={as} x={x} y={y}>
                {text}
              </text>
            ))}
          </g>
          {regionSpots.map(({ key, at, touch }) => (
            <g key={key} class={`spot region${lit(key)}`} {...spot(key, of(key))}>
              <path class="touch" d={touch} />
              <MarkSign mark={of(key)} x={at.x} y={at.y} room={10} />
            </g>
          ))}
          {rowSpots.map(({ key, at, touch, line }) => (
            <g key={key} class={`spot row-line${of(key).look ? ' said' : ''}${lit(key)}`} {...spot(key, of(key))}>
              <path class="touch" d={touch} />
              <path class="bracket" d={line} />
              <MarkSign mark={of(key)} x={at.x} y={at.y} room={9} />
            </g>
          ))}
          {drawnSpaces.map(({ key, at, touch, tick }) => (
            <g key={key} class={`spot gap${lit(key)}`} {...spot(key, of(key))}>
              <path class="touch" d={touch} />
              <path class="tick" d={tick} />
              <MarkSign mark={of(key)} x={at.x} y={at.y} room={8} />
            </g>
          ))}
          {teeth.map(tooth)}
          <g class="writing" aria-hidden="true">
            {teeth.map((drawn) => (
              <g key={drawn.key} class={`${drawn.kind} ${state(drawn.key)}${lit(drawn.key)}`}>
                <Number at={drawn.label} text={drawn.key} doubts={of(drawn.key).doubts} />
                <Count mark={of(drawn.key)} at={drawn.at} room={room(drawn)} />
              </g>
            ))}
            {[...regionSpots, ...rowSpots, ...drawnSpaces].map(({ key, at }) => (
              <g key={key} class="beside">
                {of(key).doubts > 0 && <Number at={{ x: at.x, y: at.y - 20 }} text="" doubts={of(key).doubts} />}
                <Count mark={of(key)} at={at} room={9} />
              </g>
            ))}
          </g>
        </g>
      </svg>
      {middle && (
        <button type="button" class="whole" onClick={() => setNear(null)}>
          Whole mouth
        </button>
      )}
    </div>
  );
}

/** A tooth's number; a doubt lifts it into a tag with a question mark. */
function Number({ at, text, doubts }: { at: { x: number; y: number }; text: string; doubts: number }) {
  const away = at.x - size.width / 2;
  const beside = Math.abs(away) > 75;
  if (doubts === 0)
    return (
      <text class={`number${beside ? (away < 0 ? ' west' : ' east') : ''}`} x={at.x} y={at.y} dy="0.36em">
        {text}
      </text>
    );
  const words = text ? `${text} ?` : '?';
  const wide = words.length * 7.6 + 10;
  // Beside a row the tag grows away from the tooth.
  const x = at.x + (text && beside ? Math.sign(away) * 6 : 0);
  return (
    <g class="tag">
      <rect x={x - wide / 2} y={at.y - 10} width={wide} height={20} rx={6} />
      <text x={x} y={at.y} dy="0.36em">
        {words}
      </text>
    </g>
  );
}
