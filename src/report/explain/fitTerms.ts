// The terms of a fit: what its table and its page name.

export const fitTerms = [
  {
    names: ["log"],
    meaning:
      "A CSV file of what a line did: rows of steps with durations, of starts and ends, or of times at which a station enters a step or state. `fit` finds the columns by their names; `--column` maps others. At most 10,000 values of a step are fitted, drawn at random from all; number, mean and standard deviation are exact. A row that repeats one of the 10,000 rows before it or more is a duplicate.",
    more: ["fit", "--column", "--zone"],
  },
  {
    names: ["AIC", "Akaike's information criterion"],
    meaning:
      "2 × number of parameters − 2 × logarithm of the likelihood; of several fitted distributions the one with the smallest value loses the least. Families that are nearly equal have nearly equal values: the choice then matters little.",
    more: ["Anderson-Darling test"],
  },
  {
    names: ["Anderson-Darling test", "Kolmogorov-Smirnov test", "goodness of fit"],
    meaning:
      "How far the values lie from the fitted distribution: Anderson-Darling weighs the ends, Kolmogorov-Smirnov takes the largest distance. The p-value is the share of 199 samples of the fitted distribution that lie as far from their own fit. Below 0.05 the distribution is not suggested. At most 500 values are tested. A triangular distribution is fitted by maximum product of spacings for both tests.",
    more: ["AIC", "empirical"],
  },
  {
    names: ["timer"],
    meaning:
      "A step whose times are equal: 98 % or more lie within 0.5 % of the median, or within one digit of the log. It is a constant in a scenario. Common practice, no published source.",
    more: ["fit"],
  },
  {
    names: ["censored time", "time between stops"],
    meaning:
      "A time that the log's end cuts off is only known to be longer. It counts with the chance of being longer, so that the mean is not too short. The time before the first stop is left out, because the log does not show when it began. Times between stops are those of the calendar clock.",
    more: ["stops"],
  },
  {
    names: ["autocorrelation", "drift"],
    meaning:
      "Autocorrelation: times depend on the one before. Drift: they change over the log. The simulation draws each time anew, so that both mean a cause to look for: wear, temperature, or different products in one log.",
    more: ["log"],
  },
] as const;
