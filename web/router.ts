/** Where the person is, from the part of the address after #: `#/check/ID`, `#/book/horse/Juniper`. Works under any path. */
import { signal } from '@preact/signals';

export interface Where {
  readonly place: 'listen' | 'check' | 'book' | 'settings';
  readonly rest: readonly string[];
  readonly query: URLSearchParams;
}

/** Reads an address. Anything unknown is the book: the place from which all others are reached. */
export function whereIs(hash: string): Where {
  const [path = '', query = ''] = hash.replace(/^#\/?/, '').split('?');
  const [first, ...rest] = path.split('/').filter(Boolean).map(readable);
  const place = first === 'listen' || first === 'check' || first === 'settings' ? first : 'book';
  return { place, rest, query: new URLSearchParams(query) };
}
/** A part of the address as words; a broken escape is left as it stands. */
function readable(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
/** The address of a place: `link('book', 'horse', 'Juniper')`. */
export const link = (...parts: readonly string[]): string => `#/${parts.map(encodeURIComponent).join('/')}`;

export const where = signal<Where>(whereIs(location.hash));
addEventListener('hashchange', () => {
  where.value = whereIs(location.hash);
});
export const go = (...parts: readonly string[]): void => {
  location.hash = link(...parts);
};
