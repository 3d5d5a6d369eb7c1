/**
 * Beginnings of words that nobody says of doors, dinners and themselves: a finding's name that holds one of them is the
 * trade's own. Other names ("hook", "step", "sore") are everyday words too, and prove nothing without a place in the mouth.
 */
export const tradeStems: readonly string[] = [
  'diastema', 'interdental', 'periodont', 'perio', 'gingiv', 'calculus', 'tartar', 'supragingival', 'furcation', 'recession', 'infundibul', 'caries', 'carious', 'cement', 'hypocement', 'hypercement', 'pulp', 'apical', 'periapical', 'apically', 'resor', 'eotrh', 'odontoclastic', 'sagittal',
  'enamel', 'seps', 'etr', 'atr', 'transverse', 'overgrowth', 'overlong', 'supererupt', 'overerupt', 'occlusal', 'occlusion', 'molar', 'premolar', 'incisor', 'canine', 'tush', 'tusk', 'tooth', 'teeth', 'wolf', 'deciduous', 'supernumerary', 'polyodontia', 'unerupted', 'erupt', 'socket', 'overjet', 'overbite', 'underbite', 'underjet', 'undershot', 'overshot', 'brachygnath', 'prognath', 'parrot', 'sowm', 'campylo', 'scissor', 'pocketing', 'probing', 'gum', 'gums',
  'ulcerat', 'lacerat', 'fistula', 'epiphora', 'purulent', 'sequestrum', 'crepitus', 'asymmetr', 'pouching', 'quid', 'muscle', 'atroph', 'lymph', 'lymphadenopathy', 'node', 'gland', 'excursion', 'rostrocaudal', 'percuss', 'epistaxis', 'lampas', 'lampus', 'halitosis', 'hypersaliv', 'salivating', 'ptyalism', 'drool', 'headshaking', 'polyp', 'sarcoid', 'unremarkable', 'abnormal', 'abnormality', 'abnormalities',
];
