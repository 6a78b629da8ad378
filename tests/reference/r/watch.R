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
  expected = list(upper = up, lower = lo, first_signal = which(up > 2.5)[1], excess = cumsum(x - E), ratio = sum(x) / sum(E), ratio_limits = c(qchisq(.025, 2 * sum(x)), qchisq(.975, 2 * sum(x) + 2)) / 2 / sum(E)))

x <- c(1, 0, 2, 1, 0, 3, 1, 2, 4, 3, 0, 5, 2, 1, 0, 0, 1, 6, 2, 3); k <- 1 / log(2); c0 <- 0; p <- numeric(20); s <- c()
for (i in 1:20) { c0 <- max(0, c0 + x[i] - k); p[i] <- c0; if (c0 >= 4) { s <- c(s, i); c0 <- 0 } }
golden("poisson-cusum-reset", "Cumulative sum set back after each signal, in units of counts", "constructed; reference value 1 / log 2 for rates 1 and 2 (Lucas 1985)",
  table = data.frame(observed = x), parameters = list(limit = 4), rel = 1e-10, abs = 1e-12, expected = list(reference_value = k, path = p, signals = s, path_without_reset = path(x - k), log_likelihood_without_reset = log(2) * path(x - k)))

p <- c(.02, .10, .05, .31, .04, .08, .22, .03, .12, .06, .45, .02, .09, .15, .07); y <- c(0, 0, 1, 1, 0, 0, 1, 0, 1, 0, 0, 1, 0, 1, 1)
bernoulli <- function(R) { w <- y * log(R) - log(1 - p + R * p); list(weight = w, path = path(w)) }
golden("bernoulli-cusum", "Cumulative sums on yes-or-no outcomes of different chances, for twice and for half the odds", "constructed; weights of Steiner, Cook, Farewell and Treasure 2000, Biostatistics 1",
  table = data.frame(happened = y, chance = p), rel = 1e-10, abs = 1e-12, expected = list(up = bernoulli(2), down = bernoulli(.5)))

x <- c(210, 95, 340, 61, 500, 44, 80, 123, 15, 260, 71, 30, 9, 410, 55, 28, 66, 190, 12, 75); k <- log(180 / 90) / (1 / 90 - 1 / 180)
golden("exponential-cusum", "Cumulative sum on hours between events, mean 180 h expected and 90 h watched for", "constructed; reference value of the likelihood ratio (Lucas 1985)",
  table = data.frame(gap = x), parameters = list(expected = 180, watched = 90, limit = 360), rel = 1e-10, abs = 1e-10,
  expected = list(reference = k, path = path(k - x), first_signal = which(path(k - x) >= 360)[1]))

# Average run lengths for exponential gaps: Page's equation by piecewise Chebyshev interpolation. The average run has kinks at limit - j * reference
# (shorter) or j * reference (longer): pieces must end there, or the answer stops improving at 1e-4.
gauss <- function(n) { i <- 1:(n - 1); b <- i / sqrt(4 * i^2 - 1); A <- matrix(0, n, n); A[cbind(i, i + 1)] <- A[cbind(i + 1, i)] <- b; e <- eigen(A, symmetric = TRUE); list(x = e$values, w = 2 * e$vectors[1, ]^2) }
gap_arl <- function(h, k, mean, shorter, start = 0, n = 24) {
  h <- h / mean; k <- k / mean; start <- start / mean; kinks <- if (shorter) h - k * 1:50 else k * 1:50; br <- sort(c(0, kinks[kinks > 1e-9 & kinks < h - 1e-9], h)); m <- length(br) - 1
  q <- gauss(40); xc <- cos(pi * (2 * (1:n) - 1) / (2 * n)); T <- function(x) outer(acos(pmin(1, pmax(-1, x))), 0:(n - 1), function(a, j) cos(a * j)); Ti <- solve(T(xc))
  row <- function(s) { r <- numeric(m * n + 1); r[1] <- if (shorter) exp(-s - k) else max(0, 1 - exp(s - k)); lo <- if (shorter) 0 else max(0, s - k); hi <- if (shorter) min(h, s + k) else h
    for (j in 1:m) { a <- max(lo, br[j]); b <- min(hi, br[j + 1]); if (b > a) { y <- (a + b) / 2 + (b - a) / 2 * q$x; d <- if (shorter) exp(y - s - k) else exp(s - k - y)
      r[1 + (j - 1) * n + 1:n] <- colSums(q$w * (b - a) / 2 * d * (T((2 * y - br[j] - br[j + 1]) / (br[j + 1] - br[j])) %*% Ti)) } }; r }
  K <- t(sapply(c(0, unlist(lapply(1:m, function(j) (br[j] + br[j + 1]) / 2 + (br[j + 1] - br[j]) / 2 * xc))), row))
  L <- solve(diag(m * n + 1) - K, rep(1, m * n + 1)); 1 + sum(row(start) * L)
}
# The same by a Markov chain of equal cells, extrapolated in the cell's width.
gap_chain <- function(h, k, mean, shorter, N) { w <- h / N; S <- c(0, (1:N - .5) * w); F <- if (shorter) function(y, s) exp(-pmax(0, s + k - y) / mean) else function(y, s) -expm1(-pmax(0, y + k - s) / mean)
  P <- t(sapply(S, function(s) c(F(0, s), diff(F((0:N) * w, s))))); solve(diag(N + 1) - P, rep(1, N + 1))[1] }
chain <- function(h, k, shorter) { a <- gap_chain(h, k, 1, shorter, 400); b <- gap_chain(h, k, 1, shorter, 800); b + (b - a) / 3 }
hs <- c(2, 3, 4, 4); ks <- c(.5, .5, .693147, .75); hl <- c(1, 2, 4, 6); kl <- c(2, 2.5, 1.5, 1.8)
shorter <- mapply(gap_arl, hs, ks, 1, TRUE); longer <- mapply(gap_arl, hl, kl, 1, FALSE); closed <- exp(hl[1:2]) * (1 + exp(kl[1:2]) - hl[1:2]) - 1
golden("exponential-cusum-run-lengths", "Average run lengths of cumulative sums on exponential gaps, shorter and longer, with and without head start",
  "problem of Vardeman and Ray 1985, Technometrics 27 (its table was not at hand); closed form exp(h)(1 + exp(k) - h) - 1 for longer gaps, mean 1, h not above k (derived again in the tests)",
  table = data.frame(shorter_limit = hs, shorter_reference = ks, longer_limit = hl, longer_reference = kl), parameters = list(shorter_shifted = .5, longer_shifted = 2), rel = 1e-7, abs = 1e-9,
  expected = list(shorter = signif(shorter, 11), shorter_shifted = signif(mapply(gap_arl, hs, ks, .5, TRUE), 11), shorter_head = signif(mapply(gap_arl, hs, ks, 1, TRUE, hs / 2), 11),
    longer = signif(longer, 11), longer_shifted = signif(mapply(gap_arl, hl, kl, 2, FALSE), 11), closed_form_longer = signif(closed, 11)),
  note = "for limits that are no multiple of the reference value, pieces that end at multiples of the reference value instead of at the kinks give 427.772 for 427.725 and 187.142 for 187.106",
  checks = list("the closed form" = max(abs(longer[1:2] / closed - 1)) < 1e-9, "a Markov chain of 800 cells, extrapolated (2e-5)" = max(abs(mapply(chain, hs, ks, TRUE) / shorter - 1), abs(mapply(chain, hl, kl, FALSE) / longer - 1)) < 2e-5))

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
