# Cumulative sums and alert levels.  Run in this folder: Rscript watch.R
script_name <- "watch.R"
source("golden.R")

arl <- function(mu, k, h, unit = 1, start = 0, above = FALSE, lower = FALSE) {
  states <- if (above) h + 1 else h; P <- matrix(0, states, states)
  for (i in 0:(states - 1)) for (x in 0:200) { j <- max(0, i + (if (lower) k - unit * x else unit * x - k)); if (j < states) P[i + 1, j + 1] <- P[i + 1, j + 1] + dpois(x, mu) }
  solve(diag(states) - P, rep(1, states))[start + 1]
}
lucas <- c(arl(.25, 1, 40, 4), arl(.25, 1, 40, 4, 20), arl(.25, 1, 40, 4, lower = TRUE), arl(.25, 1, 40, 4, 20, lower = TRUE))
k <- c(1, 1, 2, 2, 3); h <- c(4, 5, 5, 7, 10); mu0 <- c(.5, .5, 1, 1, 2.4); mu1 <- c(1, 1.5, 2, 2.5, 4)
golden("poisson-cusum-run-lengths", "Average run lengths of Poisson cumulative sums, upper and lower, with and without head start",
  "Lucas 1985, Technometrics 27, Tables 2 to 5: 438, 333, 437, 318 for k = .25, h = 10, mean .25, as quoted in the help of R's spc package; the rest by Markov chain",
  table = data.frame(k, h, mu0, mu1), rel = 1e-7, abs = 1e-9,
  expected = list(lucas_upper = lucas[1], lucas_upper_head = lucas[2], lucas_lower = lucas[3], lucas_lower_head = lucas[4],
    sound = mapply(arl, mu0, k, h), shifted = mapply(arl, mu1, k, h), sound_above = mapply(arl, mu0, k, h, MoreArgs = list(above = TRUE)),
    tenths = sapply(c(.8, 1.3, 2), arl, k = 13, h = 47, unit = 10)),
  published = list(lucas = c(438, 333, 437, 318)), checks = list("the printed values" = identical(round(lucas), c(438, 333, 437, 318))))

E <- c(.42, .85, .10, .66, .91, .37, .55, .73, .20, .88, .61, .49, 0, .95, .33); x <- c(0, 1, 0, 2, 1, 0, 3, 1, 0, 2, 2, 0, 0, 4, 1)
path <- function(w) Reduce(function(c, v) max(0, c + v), w, 0, accumulate = TRUE)[-1]
up <- path(x * log(2) - E); lo <- path(x * log(.5) + .5 * E)
golden("poisson-cusum-varying-expectation", "Cumulative sums on observed against varying expected counts, for twice and for half the rate", "constructed; likelihood-ratio weights as in Rossi et al. 1999",
  table = data.frame(observed = x, expected = E), parameters = list(limit = 2.5), rel = 1e-10, abs = 1e-12,
  expected = list(upper = up, lower = lo, first_signal = which(up > 2.5)[1]))

x <- c(1, 0, 2, 1, 0, 3, 1, 2, 4, 3, 0, 5, 2, 1, 0, 0, 1, 6, 2, 3); k <- 1 / log(2); c0 <- 0; p <- numeric(20); s <- c()
for (i in 1:20) { c0 <- max(0, c0 + x[i] - k); p[i] <- c0; if (c0 >= 4) { s <- c(s, i); c0 <- 0 } }
golden("poisson-cusum-reset", "Cumulative sum set back after each signal, in units of counts", "constructed; reference value 1 / log 2 for rates 1 and 2 (Lucas 1985)",
  table = data.frame(observed = x), parameters = list(limit = 4), rel = 1e-10, abs = 1e-12, expected = list(reference_value = k, path = p, signals = s))

n <- c(3, 5, 2, 4, 6, 3, 4, 2, 5, 4, 3, 7); t <- c(820, 905, 780, 860, 1010, 940, 890, 760, 930, 880, 850, 1015)
r <- 1000 * n / t; run <- function(v) sapply(1:10, function(i) sum(v[i:(i + 2)])); pooled <- sum(n) / sum(t); avg <- run(r) / 3
x <- 0:60
golden("alert-levels-twelve-months", "One year of findings, ten alert levels per 1,000 h", "constructed; definitions as in Transport Canada AMA 571.101/1 appendix A and common practice",
  table = data.frame(events = n, hours = t), parameters = list(coming_hours = 900), rel = 1e-10, abs = 1e-12,
  expected = list(MeanPlusTwoDeviations = mean(r) + 2 * sd(r), MeanPlusTwoAndAHalfDeviations = mean(r) + 2.5 * sd(r), MeanPlusThreeDeviations = mean(r) + 3 * sd(r),
    MeanPlusTwoPopulationDeviations = mean(r) + 2 * sd(r) * sqrt(11 / 12), ThreeMonthPooledRateTimesOnePointThree = 1.3 * mean(1000 * run(n) / run(t)),
    ThreeMonthAverageRateTimesOnePointThree = 1.3 * mean(avg), ThreeMonthMeanPlusTwoDeviations = mean(avg) + 2 * sd(avg),
    PooledPlusTwoPoissonDeviations = 1000 * (pooled + 2 * sqrt(pooled / 900)), PooledPlusThreePoissonDeviations = 1000 * (pooled + 3 * sqrt(pooled / 900)),
    ExactPoissonUpperTail = 1000 * x[which(ppois(x - 1, 900 * pooled, lower.tail = FALSE) <= .025)[1]] / 900))
