# Power-law processes and trend tests.  Run in this folder: Rscript power_law.R
script_name <- "power_law.R"
source("golden.R")

laplace <- function(t, T) { n <- length(t); (sum(t) / n - T / 2) / (T * sqrt(1 / (12 * n))) }
reversals <- function(g) sum(outer(seq_along(g), seq_along(g), function(i, j) i < j & g[i] < g[j]))
permutations <- function(n) { v <- 1; for (k in 2:n) { w <- rep(0, length(v) + k - 1); for (s in 0:(k - 1)) w[seq_along(v) + s] <- w[seq_along(v) + s] + v; v <- w }; v }
one <- function(t, T) {
  n <- length(t); S <- sum(log(T / t)); b <- n / S; l <- n / T^b; u <- (n - 1) / S; z <- sort(t) / T; k <- seq_len(n)
  list(exponent = b, lambda = l, scale = T / n^(1 / b), unbiased = u, intensity = l * b * T^(b - 1), mtbf = T^(1 - b) / (l * b),
    log_likelihood = n * log(l) + n * log(b) + (b - 1) * sum(log(t)) - l * T^b, events = n, chi_square_freedom = 2 * n, laplace_p_improving = pnorm(laplace(t, T)),
    exponent_90 = b * qchisq(c(.05, .95), 2 * n) / (2 * n), chi_square = 2 * S, p_improving = pchisq(2 * S, 2 * n, lower.tail = FALSE),
    p_worsening = pchisq(2 * S, 2 * n), cramer_von_mises = 1 / (12 * n) + sum((z^u - (2 * k - 1) / (2 * n))^2), laplace = laplace(t, T))
}

t <- c(5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478); T <- 1500; r <- 10; g <- diff(c(0, t)); R <- reversals(g); v <- permutations(r)
b <- (r - 1) / sum(log(T / t)); a <- r / T^b; M <- T / (r * b); z <- qnorm(.9)
golden("nist-power-law", "Power law, time-truncated, and three trend tests of one unit",
  "NIST/SEMATECH e-Handbook 8.2.2.3, 8.2.3.4 and 8.4.5.2: modified exponent 0.483506, a 0.2913003, MTBF 310.234, 80 percent limits 157.7138 and 548.5566; 33 reversals, chi-square 37.23",
  table = data.frame(time = t), parameters = list(end = T), rel = 1e-6, abs = 1e-10,
  expected = c(one(t, T), list(modified_a = a, modified_mtbf = M, mtbf_lower_80 = M * r * (r - 1) / (r + z^2 / 4 + sqrt(r * z^2 / 2 + z^4 / 16))^2,
    mtbf_upper_80 = M * r * (r - 1) / (r - z * sqrt(r / 2))^2, growth = 1 - b, reversals = R, most_reversals = r * (r - 1) / 2, mean_reversals = r * (r - 1) / 4, variance_reversals = (2 * r + 5) * (r - 1) * r / 72, reversal_statistic = (R - r * (r - 1) / 4 + .5) / sqrt((2 * r + 5) * (r - 1) * r / 72),
    reversal_p_exact = sum(v[(R + 1):length(v)]) / sum(v), laplace_p = 2 * pnorm(-abs(laplace(t, T))))),
  published = list(unbiased = .483506, modified_a = .2913003, modified_mtbf = 310.234, mtbf_80 = c(157.7138, 548.5566), reversals = 33, chi_square = 37.23),
  checks = list("the printed digits" = max(abs(c(b, a, M) / c(.483506, .2913003, 310.234) - 1)) < 2e-6))

t <- c(2.6,16.5,16.5,17.0,21.4,29.1,33.3,56.5,63.1,70.6,73.0,77.7,93.9,95.5,98.1,101.1,132.0,142.2,147.7,149.0,167.2,190.7,193.0,198.7,251.9,282.5,286.1)
e <- one(t, 300)
golden("mil-hdbk-189-27-failures", "Power law of one unit, 27 failures to 300 h, with a tie",
  "MIL-HDBK-189 (1981) appendix C: exponent .7163392624, lambda .4538418614, MTBF 15.5109620, Cramer-von Mises .0910611, as quoted in a public benchmark file",
  table = data.frame(time = t), parameters = list(end = 300), expected = e, rel = 1e-6, abs = 1e-9,
  published = list(exponent = .7163392624, lambda = .4538418614, mtbf = 15.5109620, cramer_von_mises = .0910611),
  checks = list("the printed digits" = max(abs(unlist(e[c("exponent", "lambda", "mtbf")]) / c(.7163392624, .4538418614, 15.5109620) - 1)) < 1e-6))

edge <- c(0, 20, 40, 60, 80, 100); k <- c(13, 16, 5, 8, 7)
score <- function(b) { x <- ifelse(edge > 0, edge^b * log(edge), 0); sum(k * (diff(x) / diff(edge^b) - log(100))) }
b <- uniroot(score, c(.05, 5), tol = 1e-14)$root; l <- sum(k) / 100^b; m <- diff(l * edge^b)
golden("mil-hdbk-189-grouped", "Power law from counts between looks",
  "MIL-HDBK-189 appendix C, grouped example: exponent .752851, lambda 1.529306, intensity .3688969, MTBF 2.710784, as quoted in a public benchmark file",
  table = data.frame(start = edge[1:5], stop = edge[2:6], events = k), rel = 1e-6, abs = 1e-9,
  expected = list(exponent = b, lambda = l, intensity = l * b * 100^(b - 1), mtbf = 100^(1 - b) / (l * b), expected_counts = m,
    last_span_intensity = m[5] / 20, chi_square = sum((k - m)^2 / m), freedom = length(k) - 2, p = pchisq(sum((k - m)^2 / m), 3, lower.tail = FALSE), log_likelihood_with_factorials = sum(dpois(k, m, log = TRUE)), factorials = sum(lgamma(k + 1))),
  published = list(exponent = .752851, lambda = 1.529306, mtbf = 2.71078425), checks = list("the printed digits" = abs(b / .752851 - 1) < 3e-5))

s <- list(c(4.3,4.4,10.2,23.5,23.8,26.4,74.0,77.1,92.1,197.2), c(.1,5.6,18.6,19.5,24.2,26.7,45.1,45.8,75.7,79.7,98.6,120.1,161.8,180.6,190.8),
          c(8.4,32.5,44.7,48.4,50.6,73.6,98.7,112.2,129.8,136.0,195.8)); T <- 200; all <- unlist(s)
S <- sapply(s, function(t) sum(log(T / t))); M <- lengths(s); n <- sum(M); b <- n / sum(S); l <- n / (3 * T^b); u <- (n - 1) / n * b; z <- sort(all) / T; i <- seq_len(n)
bq <- M / S; bs <- n / sum(M / bq); D <- 2 * (sum(M * log(bq)) - n * log(bs)) / (1 + (sum(1 / M) - 1 / n) / (6 * 2))
Te <- sapply(s, max); score <- function(b) { l <- n / sum(Te^b); n / b + sum(log(all)) - l * sum(Te^b * log(Te)) }
be <- uniroot(score, c(.05, 5), tol = 1e-14)$root; Se <- sum(mapply(function(t, T) sum(log(T / t)), s, Te)); Me <- sum(M - 1)
golden("amsaa-tr138-three-systems", "Power law of three systems, time-truncated at 200 h and, as a second reading, each ended by its last failure",
  "Crow 1975, AMSAA Technical Report 138, Table 1 and sections 3.1 to 3.7: time-truncated lambda .461, beta .615, unbiased .598, Cramer-von Mises .069; failure-truncated lambda .443, beta .626, conditional .575, unbiased .557",
  table = data.frame(unit = rep(1:3, M), time = all), parameters = list(end = T), rel = 1e-6, abs = 1e-9,
  expected = list(sum_log = S, exponent = b, lambda = l, unbiased = u, exponent_90 = b * qchisq(c(.05, .95), 2 * n) / (2 * n), exponent_wald_90 = b * (1 + c(-1, 1) * qnorm(.95) / sqrt(n)),
    lambda_given_half_95 = c(qchisq(.025, 2 * n), qchisq(.975, 2 * n + 2)) / (2 * 3 * T^.5), lambda_simultaneous_90 = c(qchisq(.05, 2 * n) / (2 * 3 * T^(b * qchisq(.95, 2 * n) / (2 * n))), qchisq(.95, 2 * n + 2) / (2 * 3 * T^(b * qchisq(.05, 2 * n) / (2 * n)))),
    exponent_ratio = bq[2] / bq[1], ratio_freedom = 2 * M[1:2], ratio_p = pf(bq[2] / bq[1], 2 * M[1], 2 * M[2], lower.tail = FALSE), cramer_von_mises = 1 / (12 * n) + sum((z^u - (2 * i - 1) / (2 * n))^2),
    exponent_by_system = bq, homogeneity = D, homogeneity_p = pchisq(D, 2, lower.tail = FALSE),
    log_likelihood = n * log(l) + n * log(b) + (b - 1) * sum(log(all)) - 3 * l * T^b, intensity = l * b * T^(b - 1),
    failure_truncated = list(exponent = be, lambda = n / sum(Te^be), conditional = Me / Se, unbiased = (Me - 1) / Se, informative = Me)),
  published = list(exponent = .615, lambda = .461, unbiased = .598, cramer_von_mises = .069, failure_truncated_exponent = .626, failure_truncated_lambda = .443, failure_truncated_unbiased = .557),
  note = "the report prints a homogeneity statistic of 1.84; its own formula gives 1.76. Its exact lower limit .459 is .457 with exact chi-square quantiles, and the simultaneous upper limit of lambda 1.39 accordingly 1.41")

t <- c(1.382,2.990,4.124,6.827,7.472,7.567,8.845,9.450,9.794,10.848,11.993,12.300,15.413,16.497,17.352,17.632,18.122,19.067,19.172,19.299,19.360,19.686,19.940,19.944,20.121,20.132,20.431,20.525,21.057,21.061,21.309,21.310,21.378,21.391,21.456,21.461,21.603,21.658,21.688,21.750,21.815,21.820,21.822,21.888,21.930,21.943,21.946,22.181,22.311,22.634,22.635,22.669,22.691,22.846,22.947,23.149,23.305,23.491,23.526,23.774,23.791,23.822,24.006,24.286,25.000,25.010,25.048,25.268,25.400,25.500,25.518)
g <- diff(c(0, t)); r <- length(t); R <- reversals(g); T <- 25.5181
# Log-linear rate exp(g0 + g1 t).
g1 <- uniroot(function(x) sum(t) + r / x - r * T * exp(x * T) / (exp(x * T) - 1), c(1e-3, 2), tol = 1e-14)$root; g0 <- log(r * g1 / (exp(g1 * T) - 1))
direct <- optim(c(0, .1), function(p) -(r * p[1] + p[2] * sum(t) - exp(p[1]) * expm1(p[2] * T) / p[2]), control = list(reltol = 1e-15, maxit = 5000))
golden("halfbeak-trend", "Power law and trend tests of one engine, 71 events to 25.5181 thousand hours",
  "USS Halfbeak number 4 engine, Ascher and Feingold; data set of Meeker and Escobar 1998, chapter 16; results computed",
  table = data.frame(time = t), parameters = list(end = 25.5181), rel = 1e-6, abs = 1e-9,
  expected = c(one(t, 25.5181), list(reversals = R, reversal_statistic = (R - r * (r - 1) / 4 + .5) / sqrt((2 * r + 5) * (r - 1) * r / 72), lewis_robinson = laplace(t, T) * mean(g) / sd(g),
    log_linear = list(log_rate = g0, slope = g1, log_likelihood = r * g0 + g1 * sum(t) - exp(g0) * expm1(g1 * T) / g1))),
  checks = list("direct search for the log-linear rate" = max(abs(direct$par - c(g0, g1))) < 1e-4))

t <- c(22500,37500,46000,48500,51500,53000,54500,57500,66500,68000,69500,76500,77000,78500,80000,81500,82000,83000,84000,91500,93500,102500,107000,108500,112500,113500,116000,117000,118500,119000,120000,122500,123000,127500,131000,132500,134000)
e <- one(t, 135000); R <- reversals(diff(c(0, t))); r <- length(t)
golden("nist-hahn-trend", "Three trend tests on 37 failure ages",
  "Hahn and Shapiro 1967, NIST sample data HAHN.DAT with printed output: 215 reversals, chi-square 35.72037 (cdf 0.4925163E-04), Laplace 3.416969",
  table = data.frame(time = t), parameters = list(end = 135000), rel = 1e-6, abs = 1e-9,
  expected = c(e[c("events", "chi_square", "chi_square_freedom", "p_worsening", "laplace", "laplace_p_improving")], list(reversals = R, reversal_statistic = (R - r * (r - 1) / 4 + .5) / sqrt((2 * r + 5) * (r - 1) * r / 72))),
  published = list(reversals = 215, chi_square = 35.72037, chi_square_cdf = .4925163e-4, laplace = 3.416969),
  note = "the printed reversal statistic -21.40790 comes from a missing bracket; the formula gives -3.073537",
  checks = list("the printed digits" = R == 215 && abs(e$laplace - 3.416969) < 1e-5))
