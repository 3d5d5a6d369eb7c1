/** Words that point at what was worked on, where it may go, and other places that are named by it alone. */
export const pointsAtOne: readonly string[] = ['it', 'that', 'this', 'them', 'those', 'these'];
export const wentAway: readonly string[] = ['off', 'down', 'out', 'back', 'away', 'up', 'through', 'over'];
export const carriedSides: readonly string[] = ['other side', 'other one', 'opposite side', 'opposite one', 'one opposite', 'opposite number', 'its opposite', 'its mate', 'its pair'];
