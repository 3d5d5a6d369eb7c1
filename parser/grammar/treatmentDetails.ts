/** How work was done, in the words that stand beside it: how much, with what, where on the tooth, how it came out. */
import type { ItemBody } from './made.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

export function treatmentDetails(
  marks: readonly Mark[],
  mods: readonly number[],
  tokens: readonly Token[],
): Partial<Extract<ItemBody, { kind: 'treatment' }>> {
  const out: Record<string, unknown> = {};
  for (const m of mods) {
    const mark = marks[m] as Mark;
    if (mark.measure?.value !== undefined && (mark.measure.unit === 'mm' || mark.measure.unit === 'cm')) {
      const scale = mark.measure.unit === 'cm' ? 10 : 1;
      const value = mark.measure.value as number | readonly [number, number];
      out['amountMm'] = typeof value === 'number' ? value * scale : [value[0] * scale, value[1] * scale];
      const basis = tokens[mark.from - 1]?.t;
      if (basis === 'by' || basis === 'to') out['amountBasis'] = basis;
    }
    if (mark.measure?.said !== undefined && mark.measure.value === undefined) {
      out['amountSaid'] = mark.measure.said;
      if (tokens[mark.from - 1]?.t === 'by') out['amountBasis'] = 'by';
    }
    for (const term of mark.terms ?? []) {
      if (term.k === 'work' && term.term.as === 'instrument' && !ruledOutBefore(marks, m)) out['instrument'] = term.term.instrument;
      if (term.k === 'work' && term.term.as === 'water') out['waterCooled'] = true;
      if (term.k === 'work' && term.term.as === 'supervised') out['supervisedBy'] = 'veterinarian';
      if (term.k === 'work' && term.term.as === 'level') out['amountBasis'] = 'level';
      if (term.k === 'work' && term.term.as === 'outcome') out['outcome'] = term.term.outcome;
      // "ground it back", "took the incisors back": how far, and no end of the tooth.
      const pushed = mark.to - mark.from === 1 && ['back', 'backwards'].includes(tokens[mark.from]?.t ?? '');
      if (term.k === 'qualifier' && ['rostral', 'caudal'].includes(term.id) && !pushed)
        out['qualifiers'] = [...((out['qualifiers'] as string[] | undefined) ?? []), term.id];
      if (term.k === 'surface') out['surfaces'] = [...((out['surfaces'] as string[] | undefined) ?? []), term.id];
    }
  }
  return out;
}

/** "no motorised": what was not used is no instrument. */
function ruledOutBefore(marks: readonly Mark[], at: number): boolean {
  const before = marks.slice(0, at).findLast(({ terms }) => !terms?.every((t) => t.k === 'glue'));
  return before?.terms?.some((t) => t.k === 'cue' && t.cue.means === 'absent') ?? false;
}
