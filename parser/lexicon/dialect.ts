/** Words of some parts of the country, in the words that the rest of the lexicon is written in. Common knowledge, no source. */
const verbs = ['is', 'are', 'was', 'were', 'do', 'does', 'did', 'has', 'have', 'had', 'can', 'could', 'would', 'should', 'will'];
export const dialect: Readonly<Record<string, readonly string[]>> = {
  ...Object.fromEntries(verbs.map((verb) => [`${verb}nae`, [verb, 'not']])),
  nowt: ['nothing'], wi: ['with'], twelvemonth: ['twelve', 'months'], owt: ['anything'], summat: ['something'], nae: ['no'], naw: ['no'], nah: ['no'], nane: ['none'], ower: ['over'], mebbe: ['maybe'], "y'all": ['you'], yous: ['you'], youse: ['you'], "ain't": ['is', 'not'], dinnae: ['do', 'not'], cannae: ['can', 'not'],
  dope: ['sedate'], doped: ['sedated'], doping: ['sedating'], tushie: ['tush'], tushies: ['tushes'], remainder: ['rest'],
};
