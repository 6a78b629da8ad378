# Control charts and their average run lengths (R's spc package).  Run in this folder: Rscript charts.R
script_name <- "charts.R"
source("golden.R")
suppressMessages(library(spc))

x <- c(324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600, 324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350)
path <- function(w) Reduce(function(c, v) max(0, c + v), w, 0, accumulate = TRUE)[-1]
hi <- path(x - 325 - .3175); lo <- path(325 - .3175 - x); out <- which(hi > 4.1959 | lo > 4.1959)
printed <- list(upper = c(0, 0, 0, 0, .03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.00, 19.04), lower = c(0, .01, 0, .33, 0, 0, .56, .72, .17, .25, .31, rep(0, 9)), first_signal = 14)
golden("nist-6.3.2.3-cusum", "Tabular two-sided cumulative sum", "NIST/SEMATECH e-Handbook 6.3.2.3: target 325, k = 0.3175, h = 4.1959, both printed columns, first signal at 14",
  table = data.frame(value = x), parameters = list(target = 325, allowance = .3175, limit = 4.1959), rel = 1e-9, abs = 1e-9,
  expected = list(upper = hi, lower = lo, first_signal = out[1], signals = length(out)), published = printed,
  note = "values that end in 5 at the third place are printed rounded either way: 0.0051 holds against print",
  checks = list("both printed columns" = max(abs(hi - printed$upper), abs(lo - printed$lower)) <= .0051 && out[1] == 14))

x <- c(52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1)
z <- Reduce(function(p, v) .3 * v + .7 * p, x, 50, accumulate = TRUE)[-1]; long <- 3 * 2.0539 * sqrt(.3 / 1.7); half <- long * sqrt(1 - .7^(2 * 1:20))
printed <- list(average = c(50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99), upper_limit = 52.5884, lower_limit = 47.4115)
golden("nist-6.3.2.4-ewma", "Exponentially weighted moving average with long-run and exact limits", "NIST/SEMATECH e-Handbook 6.3.2.4: start 50, s = 2.0539, weight 0.3, limits 52.5884 and 47.4115, twenty printed averages",
  table = data.frame(value = x), parameters = list(target = 50, deviation = 2.0539, weight = .3, width = 3), rel = 1e-9, abs = 1e-9,
  expected = list(average = z, upper_limit = 50 + long, lower_limit = 50 - long, upper_exact = 50 + half, lower_exact = 50 - half, outside_long_run = sum(abs(z - 50) > long)),
  published = printed, note = "the lower limit is 47.411568; the page prints it cut off, not rounded",
  checks = list("the printed averages and limits" = max(abs(z - printed$average)) < .0051 && abs(50 + long - 52.5884) < 1e-4 && abs(50 - long - 47.4115) < 1e-4))

dispersion <- function(x, e) { c2 <- sum((x - e)^2 / e); list(chi_square = c2, p = pchisq(c2, length(x) - 1, lower.tail = FALSE), deviance = 2 * sum(ifelse(x > 0, x * log(x / e), 0) - (x - e))) }
x <- c(16, 14, 28, 16, 12, 20, 10, 12, 10, 17, 19, 17, 14, 16, 15, 13, 14, 16, 11, 20, 11, 19, 16, 31, 13); m <- mean(x)
golden("nist-6.3.3.1-c-chart", "Chart of counts, three deviations, with the exact tail and the index of dispersion", "NIST/SEMATECH e-Handbook 6.3.3.1: 25 wafers, mean 16, limits 28 and 4",
  table = data.frame(events = x), rel = 1e-9, abs = 1e-12,
  expected = list(rate = m, upper_limit = m + 3 * sqrt(m), lower_limit = m - 3 * sqrt(m), signals = I(which(abs(x - m) > 3 * sqrt(m))), upper_p_of_31 = ppois(30, m, lower.tail = FALSE), equal_rates = dispersion(x, m)),
  published = list(rate = 16, upper_limit = 28, lower_limit = 4), checks = list("the printed limits" = m == 16))

x <- c(3, 0, 5, 2, 9, 1, 4, 2, 0, 6); t <- c(412.5, 155.0, 498.2, 301.7, 420.0, 88.4, 390.9, 275.3, 61.0, 444.4); u <- sum(x) / sum(t)
golden("u-chart-unequal-exposure", "Chart of rates with unequal hours: limits, deviations, exact tails, equal rates", "constructed; formula of NIST/SEMATECH e-Handbook 6.3.3.1 per hour",
  table = data.frame(events = x, hours = t), rel = 1e-9, abs = 1e-12,
  expected = list(rate = u, upper_limit = u + 3 * sqrt(u / t), lower_limit = pmax(0, u - 3 * sqrt(u / t)), deviations = (x / t - u) / sqrt(u / t), upper_p = ppois(x - 1, u * t, lower.tail = FALSE),
    mid_upper_p = ppois(x, u * t, lower.tail = FALSE) + .5 * dpois(x, u * t), equal_rates = dispersion(x, u * t)),
  checks = list("expected counts that add up to the events" = abs(sum(u * t) - sum(x)) < 1e-9))

# Average run lengths, sixty quadrature nodes. Ten digits are kept: their last ones depend on the machine's linear algebra.
kept <- function(v) signif(unname(v), 10)
cusum <- function(k, h, mu, ...) kept(sapply(mu, function(m) xcusum.arl(k, h, m, r = 60, ...)))
mu <- c(0, .25, .5, .75, 1, 1.5, 2, 2.5, 3, 4, 5); vance <- c(-.25, -.125, 0, .125, .25, .5, .75, 1)
e <- list(brook_evans = cusum(.5, 3, c(0, 1.5)), lucas_crosier = cusum(.5, 4, mu, sided = "two"), lucas_crosier_head = cusum(.5, 4, mu, hs = 2, sided = "two"), vance = cusum(0, 10, vance),
  waldmann = cusum(.5, 3, c(-.5, 0, .5)), two_sided_5 = cusum(.5, 5, 0:1, sided = "two"), one_sided_4 = cusum(.5, 4, 0:1))
printed <- list(brook_evans = c(117.59, 3.75), lucas_crosier = c(168, 74.2, 26.6, 13.3, 8.38, 4.75, 3.34, 2.62, 2.19, 1.71, 1.31), lucas_crosier_head = c(149, 62.7, 20.1, 8.97, 5.29, 2.86, 2.01, 1.59, 1.32, 1.07, 1.01),
  vance = c(2071.51, 400.28, 124.66, 59.30, 36.71, 20.37, 14.06, 10.75), waldmann = c(1963, 117.4, 17.35))
near <- function(name, share) max(abs(e[[name]] / printed[[name]] - 1)) < share
golden("cusum-arl-normal", "Average run lengths of cumulative sums on normal values: one-sided, two-sided, head start",
  "R package spc 0.6.7, xcusum.arl; Brook and Evans 1972; Lucas and Crosier 1982 Table 1; Vance 1986 Table 1; Waldmann 1986, as quoted in its help",
  parameters = list(lucas_crosier_shifts = mu, vance_shifts = vance), expected = e, published = printed, rel = 1e-5, abs = 1e-8,
  note = "Waldmann's printed 117.4 is 117.5957 (Brook and Evans print 117.59); Vance's 2071.51 is 2071.5721; the other printed values hold to their digits",
  checks = list("Brook and Evans" = near("brook_evans", 1e-3), "Lucas and Crosier" = near("lucas_crosier", .005) && near("lucas_crosier_head", .005), "Vance" = near("vance", 3.5e-4), "Waldmann" = near("waldmann", 2e-3)))

ewma <- function(l, c, mu) kept(sapply(mu, function(m) xewma.arl(l, c, m, sided = "two", r = 60)))
quarter <- (0:16) / 4; some <- c(0, .25, .5, .75, 1, 1.5, 2, 2.5, 3, 3.5, 4, 5)
e <- list(crowder_50 = ewma(.5, 2, quarter), crowder_05 = ewma(.05, 2, quarter), lucas_saccucci_50 = ewma(.5, 3.071, some), lucas_saccucci_03 = ewma(.03, 2.437, some))
printed <- list(crowder_50 = c(26.45, 20.12, 11.89, 7.29, 4.91, 3.95, 2.80, 2.29, 1.94, 1.70, 1.51, 1.37, 1.26, 1.18, 1.12, 1.08, 1.05),
  crowder_05 = c(127.53, 43.94, 18.97, 11.64, 8.38, 6.56, 5.41, 4.62, 4.04, 3.61, 3.26, 2.99, 2.76, 2.56, 2.39, 2.26, 2.15),
  lucas_saccucci_50 = c(500, 255, 88.8, 35.9, 17.5, 6.53, 3.63, 2.50, 1.93, 1.58, 1.34, 1.07), lucas_saccucci_03 = c(500, 76.7, 29.3, 17.6, 12.6, 8.07, 5.99, 4.80, 4.03, 3.49, 3.11, 2.55))
golden("ewma-arl-normal", "Average run lengths of moving averages on normal values, two-sided, long-run limits",
  "R package spc 0.6.7, xewma.arl; Crowder 1987 Table 1; Lucas and Saccucci 1990 Table 3, as quoted in its help",
  parameters = list(crowder_shifts = quarter, lucas_saccucci_shifts = some), expected = e, published = printed, rel = 1e-5, abs = 1e-8,
  note = "Crowder's printed 3.95 at weight .5, shift 1.25 is 3.590 (a misprint that the help marks too)",
  checks = list("Crowder" = max(abs(e$crowder_50 - printed$crowder_50)[-6], abs(e$crowder_05 - printed$crowder_05)) < .011,
    "Lucas and Saccucci" = near("lucas_saccucci_50", .005) && near("lucas_saccucci_03", .005)))

mu <- c(10, 14, 18, 20, 22, 26, 30); chain <- function(...) kept(sapply(mu, function(m) pois.ewma.arl(.27, 3.319, 3.319, 20, 20, m, ...)))
spread <- chain(); fine <- chain(N = 401)
golden("poisson-ewma-arl", "Average run lengths of a moving average of Poisson counts", "R package spc 0.6.7, pois.ewma.arl, in the setting of Borror, Champ and Rigdon 1998: weight .27, width 3.319, mean 20",
  parameters = list(weight = .27, width = 3.319, expected = 20, means = mu), rel = 1e-4, abs = 1e-4,
  expected = list(spread_101 = spread, midpoint_101 = chain(mcdesign = "classic"), spread_401 = fine),
  note = "no closed value exists: a finer chain changes the answer by up to half a percent", checks = list("a finer chain, to one percent" = max(abs(spread / fine - 1)) < .01))
