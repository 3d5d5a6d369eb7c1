/** What must hold of every reading, whatever was said. */
import { Item } from '../../parser/contract/item.ts';
import { explain, type Parsed } from '../../parser/index.ts';
import { conditions } from '../../parser/lexicon/conditions.ts';

/** Every item stands by its schema, those of readings offered too; a finding that needs a place has one, or the doubt that asks for it (what corrects another inherits its open questions). */
export function sound(result: Parsed): readonly string[] {
  const offered = result.doubts.flatMap(({ readings = [] }) => readings.flatMap(({ items }) => items));
  const broken = [...result.items, ...offered].flatMap(
    (item) => Item.safeParse(item).error?.issues.map((issue) => `${item.kind} ${issue.path.join('.')}: ${issue.message}`) ?? [],
  );
  const placeless = result.items.filter(
    (item) =>
      item.kind === 'finding' &&
      item.presence !== 'absent' &&
      item.place === null &&
      item.said === undefined &&
      item.revises === undefined &&
      !(conditions[item.condition].places as readonly string[]).includes('N') &&
      !result.doubts.some(
        (doubt) => doubt.item === item.id && ['no-place', 'no-such-tooth', 'two-readings', 'unlikely'].includes(doubt.doubt),
      ),
  );
  return [...broken, ...placeless.map((item) => `no place and no question: ${explain(result)} ${item.id}`)];
}
