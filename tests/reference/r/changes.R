# The score of a change of rate.  Run in this folder: Rscript changes.R
script_name <- "changes.R"
source("golden.R")

# Three units, three locations, eight periods; exposure in hundreds of hours, findings per period and location.
set.seed(20261127)
units <- 3; places <- 3; periods <- 8; window <- 5
exposure <- array(round(runif(units * places * periods, 0.6, 1.4), 2), c(units, places, periods))
exposure[2, , 4] <- 0
exposure[3, , 1:2] <- 0
rate <- c(0.08, 0.3, 1.2)
found <- array(rpois(length(exposure), exposure * rate[slice.index(exposure, 2)]), dim(exposure))
found[1, 2, 6:8] <- c(1, 2, 2)
k <- 6; dispersion <- 1.25
ratios <- c(2, 3, 5, 8, 12)
scopes <- list(whole = 1:3, pair = 1:2, first = 1, second = 2, third = 3)
weights <- c(0.5, 0.25, rep(0.25 / 3, 3))

# Rates of locations as draws of a gamma distribution: its shape by maximum likelihood over all units.
n <- apply(found, 2, sum); h <- apply(exposure, 2, sum)
best <- optim(c(0, 0), function(p) -sum(dnbinom(n, size = exp(p[1]), mu = exp(p[2]) * h, log = TRUE)), control = list(reltol = 1e-15, maxit = 5000))
best <- optim(best$par, function(p) -sum(dnbinom(n, size = exp(p[1]), mu = exp(p[2]) * h, log = TRUE)), method = "BFGS", control = list(reltol = 1e-16))
shape <- exp(best$par[1])

log_ratio <- function(N, E, Ns, Es, r) Ns * log(r) + (k + N) * log((k + E) / (k + E + (r - 1) * Es))
by_integral <- function(N, E, Ns, Es, r) {
  f <- function(z, rr) dgamma(z, k, k) * exp(N * log(z) - z * E) * rr^Ns * exp(-z * (rr - 1) * Es)
  log(integrate(f, 0, Inf, rr = r, rel.tol = 1e-11)$value / integrate(f, 0, Inf, rr = 1, rel.tol = 1e-11)$value)
}
score <- function(i, t) {
  others <- setdiff(1:units, i)
  no <- apply(found[others, , 1:t, drop = FALSE], 2, sum); ho <- apply(exposure[others, , 1:t, drop = FALSE], 2, sum)
  lambda <- (shape + no) / (shape * sum(ho) / (sum(no) + 0.5) + ho)
  e <- exposure[i, , , drop = TRUE] * lambda; x <- found[i, , , drop = TRUE]
  first <- min(which(colSums(exposure[i, , ]) > 0))
  total <- 0
  for (since in max(first + 1, t - window + 1):t) for (s in seq_along(scopes)) {
    Ns <- sum(x[scopes[[s]], since:t]); Es <- sum(e[scopes[[s]], since:t])
    if (Ns > 0) for (r in ratios)
      total <- total + weights[s] / window / length(ratios) * exp(log_ratio(sum(x[, 1:t]) / dispersion, sum(e[, 1:t]) / dispersion, Ns / dispersion, Es / dispersion, r))
  }
  log(total)
}
rows <- do.call(rbind, lapply(1:units, function(i) do.call(rbind, lapply(1:periods, function(p) do.call(rbind, lapply(1:places, function(l)
  data.frame(unit = i, period = p, location = l, exposure = exposure[i, l, p], found = found[i, l, p])))))))
golden("change-score", "Score of a change of rate: the likelihood ratio averaged over when it began, how strong it is and which part it takes",
  "derived from the gamma-Poisson model (conjugacy: Gelman et al. 2013, Bayesian Data Analysis, section 2.6); sums written out in R; constructed, seed 20261127",
  table = rows, parameters = list(shape = k, dispersion = dispersion, window = window), rel = 1e-5, abs = 1e-6,
  expected = list(location_shape = shape, score = sapply(1:units, score, t = periods), earlier = sapply(1:units, score, t = 6),
    single = log_ratio(7, 4.2, 5, 1.3, 3)),
  checks = list("the integral over the level" = abs(by_integral(7, 4.2, 5, 1.3, 3) - log_ratio(7, 4.2, 5, 1.3, 3)) < 1e-8))
