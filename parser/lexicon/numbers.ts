/** Number words. Values as people say them; "oh" and "o" are zero between digits only. */
export const digitWords: Readonly<Record<string, number>> = { zero: 0, nought: 0, naught: 0, aught: 0, nil: 0, one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9 };
export const ohWords: readonly string[] = ['oh', 'o', 'zero', 'nought', 'naught', 'aught'];
export const teenWords: Readonly<Record<string, number>> = { ten: 10, eleven: 11, twelve: 12, thirteen: 13, fourteen: 14, fifteen: 15, sixteen: 16, seventeen: 17, eighteen: 18, nineteen: 19 };
export const tensWords: Readonly<Record<string, number>> = { twenty: 20, thirty: 30, forty: 40, fifty: 50, sixty: 60, seventy: 70, eighty: 80, ninety: 90 };
export const ordinalWords: Readonly<Record<string, number>> = { first: 1, second: 2, third: 3, fourth: 4, fifth: 5, sixth: 6 };
/** Plurals that name a position in every quadrant: "the sixes". */
export const positionPlurals: Readonly<Record<string, number>> = { ones: 1, twos: 2, threes: 3, fours: 4, fives: 5, sixes: 6, sevens: 7, eights: 8, nines: 9, tens: 10, elevens: 11 };
/** After these words a number is money, height, rate, time or a count of things: never a tooth. */
export const notATooth: readonly string[] = ['hand', 'hands', 'pound', 'pounds', 'dollar', 'dollars', 'quid', 'euro', 'euros', 'bale', 'bales', 'mile', 'miles', 'kilometre', 'kilometres', 'o clock', 'oclock', 'am', 'percent', 'horse', 'horses', 'pony', 'ponies', 'kilo', 'kilos', 'kilogram', 'kilograms', 'acre', 'acres', 'minute', 'minutes', 'hour', 'hours', 'second', 'seconds', 'beat', 'beats', 'bag', 'bags', 'people', 'foot', 'feet', 'times', 'days', 'day', 'weeks', 'week', 'months', 'month', 'years', 'year'];
/** Before these a number is no tooth either: "heart rate forty", "that's one ten today". */
export const notAToothBefore: readonly string[] = ['rate', 'costs', 'cost', 'pay', 'owe', 'owes', 'paid', 'charge', 'comes to', 'speed'];
/** Between these a number is a price: "that's one ten today". */
export const paidBefore: readonly string[] = ["that's", 'is', 'be', 'to', 'was', 'owe', 'charged', 'call'];
export const paidAfter: readonly string[] = ['today', 'please', 'altogether', 'all', 'each', 'plus', 'cash', 'then', 'for'];
