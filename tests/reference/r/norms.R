# Norms, shrinkage and many tests at once.  Run in this folder: Rscript norms.R
script_name <- "norms.R"
source("golden.R")

p <- c(.0001,.0004,.0019,.0095,.0201,.0278,.0298,.0344,.0459,.3240,.4262,.5719,.6528,.7590,1.0000)
q <- p.adjust(p, "BH")
golden("bh-1995", "Adjusted p-values of 15 tests", "Benjamini and Hochberg 1995, worked example: four rejected at 0.05, three by Bonferroni and by Hochberg; R stats::p.adjust",
  table = data.frame(p = p), rel = 1e-10, abs = 1e-14,
  expected = list(false_discovery = q, under_dependence = p.adjust(p, "BY"), holm = p.adjust(p, "holm"), hochberg = p.adjust(p, "hochberg"), bonferroni = p.adjust(p, "bonferroni"),
    threshold = .05 * sum(q <= .05) / 15, rejected = lapply(c(false_discovery = "BH", under_dependence = "BY", holm = "holm", hochberg = "hochberg", bonferroni = "bonferroni"), function(m) sum(p.adjust(p, m) <= .05))),
  published = list(rejected_false_discovery = 4, rejected_bonferroni = 3, rejected_hochberg = 3), checks = list("the published four" = sum(q <= .05) == 4))

# Leave one out: law of a sum of binomials by direct convolution of dbinom.
d <- data.frame(stratum = rep(c("riser-1", "riser-2", "muffler"), each = 5), unit = rep(c("A", "B", "C", "D", "E"), 3),
  events = c(2, 0, 1, 7, 1, 0, 1, 0, 3, 0, 1, 2, 0, 1, 0), hours = c(820.4, 410, 633.3, 905.1, 120, 820.4, 410, 0, 905.1, 120, 300, 410, 633.3, 700.5, 0))
units <- unique(d$unit)
one <- function(u) {
  law <- 1; o <- 0; e <- 0
  for (s in unique(d$stratum)) { x <- d[d$stratum == s, ]; own <- x[x$unit == u, ]; others <- x[x$unit != u, ]
    if (own$hours == 0) next
    n <- sum(x$events); b <- dbinom(0:n, n, own$hours / sum(x$hours))
    new <- numeric(length(law) + n); for (i in seq_along(law)) for (j in seq_along(b)) new[i + j - 1] <- new[i + j - 1] + law[i] * b[j]
    law <- new; o <- o + own$events; e <- e + own$hours * sum(others$events) / sum(others$hours) }
  k <- seq_along(law) - 1
  c(observed = o, expected = e, upper = sum(law[k >= o]), lower = sum(law[k <= o]))
}
r <- t(sapply(units, one))
drive <- d[d$stratum == "riser-1", ]; ownD <- drive$unit == "D"
# Interval of a rate ratio common to all strata: the same law with the unit's hours multiplied by the ratio, solved for each tail.
tails <- function(u, ratio) {
  law <- 1; o <- 0
  for (s in unique(d$stratum)) { x <- d[d$stratum == s, ]; own <- x[x$unit == u, ]; others <- x[x$unit != u, ]
    if (own$hours == 0) next
    n <- sum(x$events); b <- dbinom(0:n, n, ratio * own$hours / (ratio * own$hours + sum(others$hours)))
    new <- numeric(length(law) + n); for (i in seq_along(law)) for (j in seq_along(b)) new[i + j - 1] <- new[i + j - 1] + law[i] * b[j]
    law <- new; o <- o + own$events }
  k <- seq_along(law) - 1
  c(upper = sum(law[k >= o]), lower = sum(law[k <= o]))
}
limit <- function(u, tail) exp(uniroot(function(x) tails(u, exp(x))[[tail]] - 0.025, c(-15, 15), tol = 1e-13)$root)
ratioLower <- sapply(units, function(u) if (r[u, "observed"] == 0) 0 else limit(u, "upper"))
ratioUpper <- sapply(units, limit, tail = "lower")
golden("leave-one-out-three-strata", "Each unit against the others over three strata, exact conditional chances", "constructed; sums of binomials convolved in R",
  table = d, rel = 1e-9, abs = 1e-13,
  expected = list(observed = r[, 1], expected = r[, 2], upper = r[, 3], lower = r[, 4], ratio = r[, 1] / r[, 2], ratio_lower = ratioLower, ratio_upper = ratioUpper,
    riser_1_of_D = list(expected = drive$hours[ownD] * sum(drive$events[!ownD]) / sum(drive$hours[!ownD]),
      upper = pbinom(drive$events[ownD] - 1, sum(drive$events), drive$hours[ownD] / sum(drive$hours), lower.tail = FALSE))))

# Gamma-Poisson: rates Gamma(shape a, rate b), counts Poisson(rate times exposure).
log_marginal <- function(a, b, x, t) sum(lgamma(a + x) - lgamma(a) - lgamma(x + 1) + a * log(b / (b + t)) + ifelse(x > 0, x * log(t / (b + t)), 0))
fit <- function(x, t) {
  f <- function(th) -log_marginal(exp(th[1]), exp(th[2]), x, t)
  g <- function(th) { a <- exp(th[1]); b <- exp(th[2]); -c(a * sum(digamma(a + x) - digamma(a) + log(b / (b + t))), b * sum(a / b - (a + x) / (b + t))) }
  th <- optim(c(0, log(sum(t) / sum(x))), f, g, method = "BFGS", control = list(reltol = 1e-15, maxit = 2000))$par
  for (i in 1:30) { h <- sapply(1:2, function(j) { e <- c(0, 0); e[j] <- 1e-5; (g(th + e) - g(th - e)) / 2e-5 }); s <- solve(h, g(th)); th <- th - s; if (max(abs(s)) < 1e-12) break }
  # Errors from the analytic second derivatives (trigamma form) in log shape and log rate.
  a <- exp(th[1]); b <- exp(th[2]); V <- solve(matrix(c(-a^2 * sum(trigamma(a + x) - trigamma(a)), -a * sum(1 - b / (b + t)), -a * sum(1 - b / (b + t)), sum(a - (a + x) * b^2 / (b + t)^2)), 2))
  list(shape = a, rate = b, prior_mean = a / b, prior_sd = sqrt(a) / b, log_likelihood = -f(th), log_likelihood_poisson = sum(dpois(x, t * sum(x) / sum(t), log = TRUE)),
    se_log_shape = sqrt(V[1, 1]), se_log_rate = sqrt(V[2, 2]), covariance = V[1, 2], posterior_shape = a + x, posterior_rate = b + t, mean = (a + x) / (b + t),
    lower = qgamma(.025, a + x, b + t), upper = qgamma(.975, a + x, b + t))
}
equal_rates <- function(x, t) { e <- t * sum(x) / sum(t); c2 <- sum((x - e)^2 / e); n <- length(x) - 1
  list(rate = sum(x) / sum(t), chi_square = c2, degrees = n, p = pchisq(c2, n, lower.tail = FALSE), deviance = 2 * sum(ifelse(x > 0, x * log(x / e), 0) - (x - e))) }
x <- c(5, 1, 5, 14, 3, 19, 1, 1, 4, 22); t <- c(94.320, 15.720, 62.880, 125.760, 5.240, 31.440, 1.048, 1.048, 2.096, 10.480)
f <- fit(x, t); a <- f$shape; b <- f$rate; lr <- 2 * (f$log_likelihood - f$log_likelihood_poisson)
m <- sum(x) / sum(t); v <- (sum(t * (x / t - m)^2) - 9 * m) / (sum(t) - sum(t^2) / sum(t))
nb <- optim(c(.8, 1.3), function(p) if (any(p <= 0)) 1e9 else -sum(dnbinom(x, size = p[1], prob = p[2] / (p[2] + t), log = TRUE)), control = list(reltol = 1e-15, maxit = 5000))
# Published priors of the full hierarchy: shape exponential of rate 1, rate Gamma(0.1, 1); posterior by a fine grid.
la <- seq(log(1e-3), log(8), length.out = 801); lb <- seq(log(1e-6), log(15), length.out = 1601)
G <- outer(la, lb, Vectorize(function(u, v) { a <- exp(u); b <- exp(v); sum(lgamma(a + x) - lgamma(a) + a * log(b) - (a + x) * log(b + t)) - a + (.1 - 1) * log(b) - b + u + v }))
W <- exp(G - max(G)); W <- W / sum(W); A <- exp(la); B <- exp(lb); ma <- sum(rowSums(W) * A); mb <- sum(colSums(W) * B)
# Another prior: mean flat on its logarithm, shrinkage shape/(1 + shape) uniform; a fine grid of log shape and log mean; equal-tailed limits.
ls <- seq(log(5e-3), log(500), length.out = 121); lm <- seq(log(1e-3), log(1e3), length.out = 241)
Q <- outer(ls, lm, Vectorize(function(u, v) { s <- exp(u); b <- s / exp(v); sum(lgamma(s + x) - lgamma(s) + s * log(b) - (s + x) * log(b + t)) + u - 2 * log1p(s) }))
Q <- exp(Q - max(Q)); Q <- Q / sum(Q); S <- exp(ls) + 0 * Q; R <- S / rep(exp(lm), each = length(ls)); on <- Q > 1e-12
at <- function(i, p) exp(uniroot(function(r) sum(Q[on] * pgamma(exp(r), S[on] + x[i], R[on] + t[i])) - p, c(-12, 6), tol = 1e-10)$root)
uniform <- list(median = sapply(1:10, at, .5), lower = sapply(1:10, at, .025), upper = sapply(1:10, at, .975),
  mean = sapply(1:10, function(i) sum(Q * (S + x[i]) / (R + t[i]))), mean_rate = sum(Q * S / R), variation_mean = sum(Q / sqrt(S)))
golden("pump-failures", "Gamma-Poisson law of ten pumps' failure rates: marginal likelihood, posteriors, and the full hierarchy",
  "Gaver and O'Muircheartaigh 1987; George, Makov and Smith 1993 (priors; published simulated values about shape .70, rate .93, theta .060 .102 .089 .116 .60 .61 .90 .91 1.6 2.0, from memory)",
  table = data.frame(events = x, exposure = t), rel = 1e-6, abs = 1e-9,
  expected = c(f, list(likelihood_ratio = lr, equal_rates_p = .5 * pchisq(lr, 1, lower.tail = FALSE), equal_rates = equal_rates(x, t), raw_rates = x / t,
    moments = list(mean = m, variance = v, shape = m^2 / v, rate = m / v), above_1 = pgamma(1, a + x, b + t, lower.tail = FALSE),
    upper_p = pnbinom(x - 1, size = a, prob = b / (b + t), lower.tail = FALSE),
    hierarchy = list(shape_mean = ma, shape_sd = sqrt(sum(rowSums(W) * A^2) - ma^2), rate_mean = mb, rate_sd = sqrt(sum(colSums(W) * B^2) - mb^2), theta_mean = sapply(1:10, function(i) sum(W * outer(A + x[i], B + t[i], "/")))), uniform_shrinkage = uniform)),
  published = list(shape_mean = .70, rate_mean = .93, theta_mean = c(.060, .102, .089, .116, .60, .61, .90, .91, 1.6, 2.0)),
  checks = list("dnbinom maximised by Nelder-Mead" = max(abs(c(a, b) / nb$par - 1)) < 1e-5))

d <- read.csv("../sim2-cracks/data.csv"); w <- d[d$what == "window", ]; e <- d[d$what == "event", ]; hours <- w$stop - w$start
x <- tabulate(e$location, 12); T <- sum(hours)
golden("sim2-cracks-locations", "Crack rates of twelve welds with exact limits, and their gamma-Poisson law", "simulated, seed 20240602 (see sim2-cracks)",
  table = data.frame(location = 1:12, events = x, hours = T), rel = 1e-6, abs = 1e-10,
  expected = c(list(rate_by_location = x / T, rate_lower = qchisq(.025, 2 * x) / 2 / T, rate_upper = qchisq(.975, 2 * x + 2) / 2 / T), fit(x, rep(T, 12))),
  checks = list("every weld cracked" = all(x > 0)))

x <- tabulate(e$unit, 60); E <- sum(x) * hours / sum(hours); f <- fit(x, E); a <- f$shape; b <- f$rate
tail <- function(x, a, b, E) pnbinom(x - 1, size = a, prob = b / (b + E), lower.tail = FALSE)
pn <- tail(x, a, b, E); pp <- ppois(x - 1, E, lower.tail = FALSE); flagged <- function(p) which(p.adjust(p, "BH") <= .05)
o <- -17; r <- sum(x[o]) / sum(hours[o]); g <- fit(x[o], r * hours[o]); e17 <- r * hours[17]
golden("sim2-cracks-aircraft", "Sixty aircraft against the fleet: gamma-Poisson law, posterior ratios, upper tails and their q-values; aircraft 17 against the others",
  "simulated, seed 20240602 (see sim2-cracks): frailty of shape 3, aircraft 17 at four times the rate", table = data.frame(events = x, expected = E, hours = hours), rel = 1e-6, abs = 1e-9,
  expected = c(f, list(above_2 = pgamma(2, a + x, b + E, lower.tail = FALSE), p_poisson = pp, p_law = pn, q_poisson = p.adjust(pp, "BH"), q_law = p.adjust(pn, "BH"),
    flagged_poisson = flagged(pp), flagged_law_count = length(flagged(pn)), top = which.max(f$mean), equal_rates = equal_rates(x, E), likelihood_ratio = 2 * (f$log_likelihood - f$log_likelihood_poisson),
    others = list(expected = e17, shape = g$shape, rate = g$rate, p_law = tail(x[17], g$shape, g$rate, e17)))),
  note = "aircraft 17 ranks first; a test that allows for spread between aircraft does not flag it after multiplicity, a plain Poisson test flags ten of sixty")

# Counts from none to two million: rows drawn at random, seed 20261125.
x <- c(25, 0, 5, 1, 0, 2000478, 0, 6, 0); t <- c(25743.114, 9299.1889, 13930.297, 15615.613, 2515.4697, 910263960000, 28911.724, 11963.418, 41587.724)
nb <- optim(c(-1, log(mean(x / t))), function(p) -sum(dnbinom(x, size = exp(p[1]), mu = exp(p[2]) * t, log = TRUE)), control = list(reltol = 1e-15, maxit = 4000))
f <- fit(x, t)
golden("counts-to-millions", "Gamma-Poisson law of nine units with counts from none to two million", "drawn at random; marginal likelihood in R",
  table = data.frame(events = x, exposure = t), rel = 1e-6, abs = 1e-12, expected = f[c("shape", "rate", "log_likelihood", "se_log_shape", "se_log_rate")],
  checks = list("dnbinom maximised by Nelder-Mead" = max(abs(c(f$shape, f$shape / f$rate) / exp(nb$par) - 1)) < 1e-4 && abs(f$log_likelihood + nb$value) < 1e-6))
