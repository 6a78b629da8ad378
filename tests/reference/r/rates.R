# Limits of Poisson means, rates, rate ratios and shares.  Run in this folder: Rscript rates.R
script_name <- "rates.R"
source("golden.R")

x <- c(0:30, 50, 100)
limits <- function(confidence) {
  tail <- (1 - confidence) / 2
  list(lower = ifelse(x == 0, 0, qchisq(tail, 2 * x) / 2), upper = qchisq(1 - tail, 2 * x + 2) / 2)
}
at95 <- limits(.95)
golden("poisson-exact-garwood", "Exact two-sided Poisson limits, counts 0 to 30, 50, 100, at 90, 95 and 99 percent",
  "Garwood 1936, chi-square form; published digits: 3.689 and one-sided 2.996 at count 0, (4.80, 18.39) at count 10",
  table = data.frame(count = x),
  expected = list(conf_90 = limits(.9), conf_95 = at95, conf_99 = limits(.99), one_sided_upper_95 = qchisq(.95, 2 * x + 2) / 2),
  published = list(zero_upper_95 = 3.689, zero_one_sided_95 = 2.996, ten_95 = c(4.80, 18.39)), rel = 1e-8, abs = 1e-12,
  checks = list("the exact test of R (poisson.test)" = max(abs(sapply(x, function(k) poisson.test(k)$conf.int[2]) - at95$upper)) < 1e-8))

x <- 1:10; t <- 101:110; z <- qnorm(.975)
mid <- function(k) c(
  uniroot(function(l) ppois(k - 1, l, lower.tail = FALSE) - .5 * dpois(k, l) - .025, c(1e-9, k + 10), tol = 1e-13)$root,
  uniroot(function(l) ppois(k, l) - .5 * dpois(k, l) - .025, c(k, 10 * k + 30), tol = 1e-13)$root)
m <- t(sapply(x, mid)); byar <- epitools::pois.byar(x, t)
golden("poisson-rates-with-exposure", "Poisson rates with exposure: exact, mid-p, Byar, score and Jeffreys limits at 95 percent",
  "counts 1 to 10 on exposures 101 to 110, the example of the epitools package's help for pois.exact; Byar limits by its pois.byar, the others computed",
  table = data.frame(events = x, exposure = t),
  expected = list(rate = x / t, exact_lower = qchisq(.025, 2 * x) / 2 / t, exact_upper = qchisq(.975, 2 * x + 2) / 2 / t,
    mid_lower = m[, 1] / t, mid_upper = m[, 2] / t,
    score_lower = (x + z^2 / 2 - z * sqrt(x + z^2 / 4)) / t, score_upper = (x + z^2 / 2 + z * sqrt(x + z^2 / 4)) / t,
    byar_lower = byar$lower, byar_upper = byar$upper,
    jeffreys_lower = qgamma(.025, x + .5) / t, jeffreys_upper = qgamma(.975, x + .5) / t), rel = 1e-7, abs = 1e-12,
  checks = list("epitools pois.exact, whose root search errs by up to 3e-5 events" = max(abs(epitools::pois.exact(x, t)$upper * t - qchisq(.975, 2 * x + 2) / 2)) < 5e-5))

d <- data.frame(events = c(5, 0, 0, 25), trials = c(25, 10, 20, 25)); two <- mapply(function(x, n) binom.test(x, n)$conf.int, d$events, d$trials)
golden("binomial-exact", "Exact limits of a share at 95 percent, two-sided and one-sided upper", "Clopper and Pearson 1934; R stats::binom.test",
  table = d, rel = 1e-8, abs = 1e-12,
  expected = list(lower = two[1, ], upper = two[2, ], one_sided_upper = mapply(function(x, n) binom.test(x, n, alternative = "less")$conf.int[2], d$events, d$trials)),
  checks = list("the beta quantiles" = max(abs(two[2, 1:3] - qbeta(.975, d$events + 1, d$trials - d$events)[1:3])) < 1e-12))

hours <- 800; events <- 2
golden("nist-8.4.5.1-hpp-bounds", "Limits of a mean time between failures from 2 failures in 800 h, 90 percent; no failure in 1000 h",
  "NIST/SEMATECH e-Handbook 8.4.5.1: lower 127.0690, upper 2251.229", rel = 1e-6, abs = 1e-9,
  parameters = list(hours = hours, events = events, confidence = .9, zero_hours = 1000, zero_tails = c(.05, .1, .2)),
  expected = list(mtbf = hours / events, lower = 2 * hours / qchisq(.95, 2 * events + 2), upper = 2 * hours / qchisq(.05, 2 * events),
    lower_failure_truncated = 2 * hours / qchisq(.95, 2 * events), zero_lower = 1000 / -log(c(.05, .1, .2)), zero_upper = Inf),
  published = list(lower = 127.0690, upper = 2251.229),
  checks = list("the printed digits" = round(2 * hours / qchisq(.95, 6), 4) == 127.0690 && round(2 * hours / qchisq(.05, 4), 3) == 2251.229))

r <- c(0:10, 15, 20, 30, 50)
factors <- lapply(c(conf_60 = .6, conf_80 = .8, conf_90 = .9, conf_95 = .95), function(c) { a <- 1 - c; x <- ifelse(r == 0, 1, r)
  list(lower = 2 * x / qchisq(1 - a / 2, 2 * (r + 1)), upper = ifelse(r == 0, Inf, 2 * x / qchisq(a / 2, 2 * x)), lower_one_sided = 2 * x / qchisq(1 - a, 2 * (r + 1))) })
printed <- c(.3340, 4.4814, .2571, 9.4912, .2108, 19.4958, .1795, 39.4978)
golden("nist-8.4.5.1-factor-table", "Factors from an observed mean time between failures to its two-sided limits and one-sided lower limit",
  "NIST/SEMATECH e-Handbook 8.4.5.1, formula of its tables; first printed rows from memory", table = data.frame(failures = r),
  expected = factors, published = list(one_failure = printed), rel = 1e-6, abs = 1e-12, note = "without failures the factor is one of the whole time, not of the mean time between failures",
  checks = list("the printed rows of one failure, to 2e-4" = max(abs(unlist(lapply(factors, function(f) c(f$lower[2], f$upper[2]))) - printed)) < 2e-4))
