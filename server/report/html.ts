/** The one way words get into a page: everything is escaped unless it was made by this function. */
export class Markup {
  constructor(readonly text: string) {}
}
type Part = Markup | string | number | null | undefined | false | readonly Part[];

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
export const escaped = (words: string): string => words.replace(/[&<>"']/g, (c) => escapes[c]!);

const written = (part: Part): string => {
  if (part === null || part === undefined || part === false) return '';
  if (part instanceof Markup) return part.text;
  return Array.isArray(part) ? part.map((one) => written(one as Part)).join('') : escaped(String(part));
};
/** Attribute values stand in double quotes in the template. */
export const html = (parts: TemplateStringsArray, ...values: readonly Part[]): Markup =>
  new Markup(parts.reduce((page, part, i) => page + written(values[i - 1]) + part));
