/** Words of place: sides, jaws, rows, groups of teeth, names of single teeth. */
export const sideSay: Readonly<Record<'left' | 'right' | 'both', readonly string[]>> = {
  left: ['left [(hand|side)]', 'lefts', 'left hand side', 'near side', 'nearside'],
  right: ['right [(hand|side)]', 'rights', 'right hand side', 'off side', 'offside'],
  both: ['both', 'both side(s)', 'bilateral(ly)', 'each side', 'either side', 'either', 'left and right', 'right and left'],
};
export const jawSay: Readonly<Record<'upper' | 'lower' | 'both', readonly string[]>> = {
  upper: ['upper(s)', 'top(s)', 'up top', 'up above', 'maxillary'],
  lower: ['lower(s)', 'bottom(s)', 'down below', 'mandibular'],
  both: ['(upper|uppers|top) and (lower|lowers|bottom)', 'upper and lower', 'top and bottom'],
};
/** Behind what is named: the jaw that it is in; and what can be named without one. */
export const jawBehind: Readonly<Record<string, string>> = { above: 'upper', below: 'lower', underneath: 'lower' };
export const kindsOfJaw: readonly string[] = ['canines', 'tushes', 'tusks', 'incisors', 'corners', 'centrals', 'laterals', 'intermediates', 'molars', 'premolars', 'sixes', 'sevens', 'eights', 'nines', 'tens', 'elevens'];
/** Words for a row of cheek teeth. */
export const rowSay: readonly string[] = ['row(s)', 'arcade(s)', 'quadrant(s)', 'batter(y|ies)', 'cheek teeth row', 'dental arcade'];
/** "The one hundreds": the quadrant by its first digit. */
export const hundredSay: Readonly<Record<string, number>> = { 'one hundreds': 1, 'two hundreds': 2, 'three hundreds': 3, 'four hundreds': 4, 'first quadrant': 1, 'second quadrant': 2, 'third quadrant': 3, 'fourth quadrant': 4, 'quadrant one': 1, 'quadrant two': 2, 'quadrant three': 3, 'quadrant four': 4 };
/** Every quadrant at once. */
export const allRound: readonly string[] = ['all four', 'all [the way] round', 'all around', 'throughout', 'all four (arcades|quadrants|rows)', 'four (arcades|quadrants|rows)', 'all (quadrants|arcades|rows)', 'everywhere', '(whole|entire) mouth'];
/** Nowhere else: kept as the place word of something ruled out. */
export const elsewhere: readonly string[] = ['elsewhere', 'anywhere else', 'anywhere', 'nowhere else', 'everywhere else'];
/** Groups of positions: positions of the modified Triadan system. */
export const groupSay: readonly { readonly say: readonly string[]; readonly positions: readonly number[] }[] = [
  { say: ['cheek (tooth|teeth)', 'cheeks teeth', 'molar teeth', 'molars and premolars', 'premolars and molars', 'grinders'], positions: [6, 7, 8, 9, 10, 11] },
  { say: ['premolars', '(front|first) three cheek teeth'], positions: [6, 7, 8] },
  { say: ['molars', '[in the] (back|last|rear) three [(cheek teeth|teeth|molars)]', 'the three (back|last|rear) [(cheek teeth|teeth|molars)]'], positions: [9, 10, 11] },
  { say: ['[in the] (back|last|rear) two [(cheek teeth|teeth|molars)]', 'the two (back|last|rear) [(cheek teeth|teeth|molars)]'], positions: [10, 11] },
  { say: ['(front|first) two cheek teeth'], positions: [6, 7] },
  { say: ['incisor(s)', 'incisor teeth', 'front teeth'], positions: [1, 2, 3] },
  { say: ['central incisor(s)', 'first incisor(s)', 'central(s)', 'nipper(s)', 'pincer(s)'], positions: [1] },
  { say: ['(middle|intermediate|second) incisor(s)', 'intermediate(s)'], positions: [2] },
  { say: ['corner incisor(s)', 'third incisor(s)', 'corner(s)'], positions: [3] },
  { say: ['canine(s)', 'canine (tooth|teeth)', 'tush(es)', 'tusk(s)'], positions: [4] },
  { say: ['first cheek (tooth|teeth)', 'second premolar(s)', 'p two'], positions: [6] },
  { say: ['second cheek (tooth|teeth)', 'third premolar(s)', 'p three'], positions: [7] },
  { say: ['third cheek (tooth|teeth)', 'fourth premolar(s)', 'p four'], positions: [8] },
  { say: ['fourth cheek (tooth|teeth)', 'first molar(s)'], positions: [9] },
  { say: ['fifth cheek (tooth|teeth)', 'second molar(s)'], positions: [10] },
  { say: ['(sixth|last) cheek (tooth|teeth)', '(third|last) molar', '(third|last) molars'], positions: [11] },
];
/** Conditions whose words name the position themselves: a wolf tooth is the 05, a canine the 04. */
export const positionOf: Readonly<Record<string, number>> = { 'wolf-tooth': 5, 'blind-wolf-tooth': 5, 'canine-present': 4 };
/** Two teeth are meant by a word that could be either: ask. */
export const askedNames: readonly { readonly say: readonly string[]; readonly positions: readonly [number, number] }[] = [
  { say: ['lateral incisor(s)', 'laterals'], positions: [2, 3] },
];
