/** The horseman's names of the two sides: the near side is the horse's own left, the off side its right. General usage, no source. */
export const horsemansSides: Readonly<Record<string, 'left' | 'right'>> = { near: 'left', nearside: 'left', off: 'right', offside: 'right' };
/** Words that make a side of "near" and "off" before them, which alone are nearness and taking off. */
export const sideNouns: readonly string[] = ['side', 'hand'];
/** What has a near and an off one, where "the" or a jaw stands before: "the near cheek", "upper off six". */
export const sidedNouns: readonly string[] = ['upper', 'lower', 'top', 'bottom', 'cheek', 'cheeks', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'canine', 'tush', 'wolf', 'corner', 'central', 'incisor', 'incisors', 'bar', 'bars', 'commissure', 'masseter', 'temporalis', 'row', 'arcade', 'quadrant', 'jaw', 'sinus', 'nostril', 'eye'];
/** Where the other of two is. */
export const acrossWords: readonly string[] = ['left', 'right', 'other', 'opposite', 'side'];
