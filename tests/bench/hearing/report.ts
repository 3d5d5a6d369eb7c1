/** Tables of the hearing bench, as Markdown. */
import { wilson } from './measure.ts';

export const share = (hits: number, of: number): string => (of === 0 ? '-' : (hits / of).toFixed(3));
/** "0.021 (3 of 146; 0.007 to 0.059)" */
export const withInterval = (hits: number, of: number): string => {
  const [low, high] = wilson(hits, of);
  return of === 0 ? '-' : `${(hits / of).toFixed(3)} (${hits} of ${of}; ${low.toFixed(3)} to ${high.toFixed(3)})`;
};

export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  return [head, head.map(() => '---'), ...rows].map((row) => `| ${row.join(' | ')} |`).join('\n');
}
