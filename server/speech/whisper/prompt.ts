/** The words to expect, as the sentence this recogniser takes for what came before. */

/** Of its 448 places half may be prompt; a token is some four letters, so 600 letters stay well under the limit of 224. */
const MAX_LETTERS = 600;

/** Names come last, nearest to the sound, and are never cut; trade words fill what is left in the order given. */
export function promptOf(names: readonly string[], tradeWords: readonly string[]): string {
  const tail = names.join(', ').slice(0, MAX_LETTERS);
  let head = '';
  for (const word of tradeWords) {
    const longer = head === '' ? word : `${head}, ${word}`;
    if (longer.length + tail.length + 2 > MAX_LETTERS) break;
    head = longer;
  }
  return [head, tail].filter((part) => part !== '').join(', ');
}
