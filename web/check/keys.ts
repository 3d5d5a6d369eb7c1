/** The keys of this screen: one table for what they do and for the sheet that lists them. */
import {
  at,
  confirmed,
  editing,
  find,
  keep,
  keepSure,
  lastStruck,
  lines,
  opened,
  picked,
  playSound,
  restore,
  settle,
  soundOfLine,
  strike,
} from './desk.ts';

export interface Key {
  readonly keys: readonly string[];
  readonly shown: string;
  readonly does: string;
  readonly writes?: boolean;
  readonly run: (key: string) => void;
}

const focusLine = (id: string): void => {
  at.value = id;
  document.getElementById(`line-${id}`)?.focus();
};
function step(by: number): void {
  const all = lines.value;
  const from = at.value ? all.indexOf(at.value) : -1;
  const to = all[from < 0 ? 0 : Math.min(all.length - 1, Math.max(0, from + by))];
  if (to) focusLine(to);
}
/** After a line is dealt with, the one that took its place is next. */
function onward(work: Promise<unknown>): void {
  const index = at.value ? lines.value.indexOf(at.value) : 0;
  void work.then(() => {
    const next = lines.value[Math.min(index, lines.value.length - 1)];
    if (next && !lines.value.includes(at.value ?? '')) focusLine(next);
  });
}
const here = (): ReturnType<typeof find> => find(at.value);
function answer(n: number): void {
  const { question } = here();
  if (question?.doubt.readings?.[n]) onward(settle(question.doubt.id, 'reading', n));
}

export const keyTable: readonly Key[] = [
  { keys: ['j', 'ArrowDown'], shown: 'j or ↓', does: 'Next line', run: () => step(1) },
  { keys: ['k', 'ArrowUp'], shown: 'k or ↑', does: 'Line before', run: () => step(-1) },
  {
    keys: ['Enter'],
    shown: 'Enter',
    does: 'Open or close the words of a line',
    run: () => {
      if (here().item) opened.value = opened.value === at.value ? null : at.value;
    },
  },
  {
    keys: ['p'],
    shown: 'p',
    does: 'Play its sound',
    run: () => {
      if (at.value) playSound(soundOfLine(at.value));
    },
  },
  {
    keys: ['1', '2', '3', '4'],
    shown: '1 to 4',
    does: 'Choose that reading of a question',
    writes: true,
    run: (key) => answer(Number(key) - 1),
  },
  {
    keys: ['y'],
    shown: 'y',
    does: 'Keep it (a question: keep as said)',
    writes: true,
    run: () => {
      const { item, question } = here();
      if (question) onward(settle(question.doubt.id, 'kept-as-said'));
      else if (item?.state === 'open') void keep(item.item.id);
    },
  },
  {
    keys: ['s'],
    shown: 's',
    does: 'Strike it',
    writes: true,
    run: () => {
      const { item, question } = here();
      if (question) onward(settle(question.doubt.id, 'struck'));
      else if (item && item.state !== 'struck') void strike(item.item.id);
    },
  },
  {
    keys: ['b'],
    shown: 'b',
    does: 'Bring back what is struck',
    writes: true,
    run: () => {
      const { item } = here();
      if (item?.state === 'struck') void restore([item.item.id]);
    },
  },
  { keys: ['u'], shown: 'u', does: 'Undo the last strike', writes: true, run: () => void restore(lastStruck.value) },
  {
    keys: ['e'],
    shown: 'e',
    does: 'Change it',
    writes: true,
    run: () => {
      const { item } = here();
      if (item) {
        opened.value = item.item.id;
        editing.value = item.item.id;
      }
    },
  },
  {
    keys: ['a'],
    shown: 'a',
    does: 'Add by hand',
    writes: true,
    run: () => {
      editing.value = 'new';
    },
  },
  { keys: ['K'], shown: 'Shift K', does: 'Keep all that is sure', writes: true, run: () => void keepSure() },
  {
    keys: ['m'],
    shown: 'm',
    does: 'Go to the mouth (arrows walk its teeth and gaps)',
    run: () => document.querySelector<SVGElement>('.check .mouth [tabindex="0"]')?.focus(),
  },
  {
    keys: ['Escape'],
    shown: 'Esc',
    does: 'Show everything again',
    run: () => {
      picked.value = null;
    },
  },
  { keys: ['c'], shown: 'c', does: 'Confirm this record', writes: true, run: () => document.getElementById('confirm')?.click() },
  { keys: ['?'], shown: '?', does: 'This list', run: () => document.getElementById('keys')?.click() },
];
const table = new Map(keyTable.flatMap((key) => key.keys.map((k) => [k, key] as const)));

/** Keys are left to fields, dialogs, buttons (Enter) and the drawn mouth (arrows). */
export function onKey(event: KeyboardEvent): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const target = event.target as Element;
  if (target.closest('input, select, textarea, dialog, [contenteditable]')) return;
  if (event.key === 'Enter' && target.closest('button, a, summary')) return;
  if (event.key.startsWith('Arrow') && target.closest('.mouth')) return;
  if (event.key === 'Enter' && target.closest('.mouth')) return;
  const key = table.get(event.key);
  if (!key || (key.writes && confirmed.value)) return;
  event.preventDefault();
  key.run(event.key);
}
