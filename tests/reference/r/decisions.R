# Renewal ages and demand.  Run in this folder: Rscript decisions.R
script_name <- "decisions.R"
source("golden.R")

g <- expand.grid(shape = c(1.2, 2.2, 3.5), cf = c(2, 5, 20)); e <- 900
IR <- function(T, b) e / b * gamma(1 / b) * pgamma((T / e)^b, 1 / b); F <- function(T, b) -expm1(-(T / e)^b)
cost <- function(T, b, cf) (cf * F(T, b) + 1 - F(T, b)) / IR(T, b)
best <- mapply(function(b, cf) uniroot(function(T) b / e * (T / e)^(b - 1) * IR(T, b) - F(T, b) - 1 / (cf - 1), c(1e-3, 1e6), tol = 1e-12)$root, g$shape, g$cf)
other <- mapply(function(b, cf) optimize(function(l) cost(exp(l), b, cf), c(0, 12), tol = 1e-10)$objective, g$shape, g$cf)
golden("age-replacement-weibull", "Best age of planned renewal of a Weibull part, planned cost 1", "Barlow and Proschan 1965, condition h(T) times mean up to T less F(T) = planned / (failure - planned)",
  table = data.frame(shape = g$shape, failure_cost = g$cf), parameters = list(scale = e), rel = 1e-7, abs = 1e-10,
  expected = list(age = best, cost = mapply(cost, best, g$shape, g$cf), run_to_failure = g$cf / (e * gamma(1 + 1 / g$shape)), fails = F(best, g$shape)),
  checks = list("direct minimisation of the cost" = max(abs(other / mapply(cost, best, g$shape, g$cf) - 1)) < 1e-7))

# Failures at one position with renewal: simulation of 400,000 positions gives the law to about 1e-3.
set.seed(20240606); n <- 4e5
renewals <- function(age, hours) { t <- 400 * (rexp(n) + (age / 400)^2.5)^(1 / 2.5) - age; k <- integer(n); while (any(t <= hours)) { i <- t <= hours; k[i] <- k[i] + 1L; t[i] <- t[i] + 400 * rweibull(sum(i), 2.5) }; k }
law <- function(k) as.vector(table(factor(pmin(k, 9), 0:9))) / n
a <- renewals(0, 1000); c <- renewals(600, 200)
golden("renewal-demand", "Law of the number of failures in the hours ahead at one position, Weibull shape 2.5 scale 400 h", "simulated, seed 20240606, 400,000 positions; mean of 2.41 in 1,000 h from new by renewal theory",
  table = data.frame(age = c(0, 600), hours = c(1000, 200)), rel = 0, abs = .004, expected = list(new_1000 = law(a), old_200 = law(c), mean_new_1000 = mean(a), first_old_200 = -expm1(1.5^2.5 - 2^2.5)))
