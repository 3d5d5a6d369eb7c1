/** What leads from one place to another of which the same is said. Common practice, no source. */
export const alikeSay: readonly string[] = ['ditto [(on|for|at)]', '[and] likewise [(on|for|at)] [the]', 'as well as [(on|at)] [one]', 'plus [one] [(on|at)]', '[and] (so|as) (is|are|has|have|does|do) [the]', 'and the same (for|on|at)', 'same (for|goes for)'];
