/** The tiny language of spoken forms: "(a|b) [c] word(s)" says a or b, c or nothing, "word" or "words". */

type Node = readonly string[][];

/**
 * All word sequences a form stands for, in order of writing.
 * @throws Error on unbalanced brackets: wrong data of ours is told at load
 */
export function expand(form: string): readonly string[][] {
  let at = 0;
  const fail = (): never => {
    throw new Error(`Spoken form with unbalanced brackets: "${form}"`);
  };

  const alternatives = (close: string): Node => {
    let all: string[][] = [];
    for (;;) {
      all = all.concat(sequence());
      if (form[at] === '|') {
        at += 1;
        continue;
      }
      if ((form[at] ?? '') !== close) fail();
      at += 1;
      return all;
    }
  };

  const sequence = (): string[][] => {
    let heads: string[][] = [[]];
    while (at < form.length && !'|)]'.includes(form[at] as string)) {
      if (form[at] === ' ') {
        at += 1;
        continue;
      }
      const glued = at > 0 && !' (|['.includes(form[at - 1] as string);
      if (form[at] === '[') {
        at += 1;
        heads = cross(heads, [[], ...alternatives(']')]);
      } else if (form[at] === '(') {
        at += 1;
        const inner = alternatives(')');
        heads = glued ? suffix(heads, inner) : cross(heads, inner);
      } else {
        const word = /^[^ |()[\]]+/.exec(form.slice(at))?.[0] ?? fail();
        at += word.length;
        heads = cross(heads, [[word]]);
      }
    }
    return heads;
  };

  const found = sequence();
  return at < form.length ? fail() : found;
}

const cross = (heads: string[][], tails: Node): string[][] => heads.flatMap((head) => tails.map((tail) => [...head, ...tail]));

/** "hook(s|ed)": the bare word, or the word with one of the endings. */
const suffix = (heads: string[][], endings: Node): string[][] =>
  heads.flatMap((head) => [head, ...endings.map((ending) => [...head.slice(0, -1), (head.at(-1) ?? '') + ending.join('')])]);
