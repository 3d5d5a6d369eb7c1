/** Words for a jaw and for a side that name a quarter of the mouth together, each with the plain one. */
export const jawSay: Readonly<Record<string, 'upper' | 'lower'>> = { upper: 'upper', top: 'upper', maxillary: 'upper', lower: 'lower', bottom: 'lower', mandibular: 'lower' };
export const sideSay: Readonly<Record<string, 'left' | 'right'>> = { left: 'left', right: 'right' };
