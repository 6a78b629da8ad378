# Renewal age, saving and look interval of a fitted Weibull life, with limits on units that differ.  Run in this folder: Rscript renewal.R
script_name <- "renewal.R"
source("golden.R")

x <- read.csv("../breast-cosmesis-two-arms/data.csv")
x$unit <- (ave(x$arm, x$arm, FUN = seq_along) %/% 6) %% 8 # eight units, as in shared_units.R
x$upper[is.na(x$upper)] <- Inf
d <- x[x$arm == 2, ]
f <- survreg(Surv(ifelse(d$lower == 0, NA, d$lower), ifelse(is.finite(d$upper), d$upper, NA), type = "interval2") ~ 1, d, dist = "weibull",
             control = survreg.control(rel.tolerance = 1e-13, maxiter = 200))
p <- c(unname(coef(f)), -log(f$scale)) # ln scale, ln shape
loglik <- function(p, d) { H <- function(t) ifelse(t == 0, 0, (t / exp(p[1]))^exp(p[2])); 
  sum(log(ifelse(d$lower == d$upper, exp(p[2]) * H(d$upper) / d$upper * exp(-H(d$upper)), exp(-H(d$lower)) - exp(-H(d$upper))))) }
first <- function(f, p, i, h = 2e-3) { e <- replace(numeric(2), i, h); (8 * (f(p + e) - f(p - e)) - (f(p + 2 * e) - f(p - 2 * e))) / (12 * h) }
derivatives <- function(d) {
  g <- function(q) c(first(function(r) loglik(r, d), q, 1), first(function(r) loglik(r, d), q, 2))
  list(g = g(p), h = outer(1:2, 1:2, Vectorize(function(i, j) first(function(q) g(q)[j], p, i))))
}
units <- sort(unique(d$unit)); n <- length(units)
parts <- lapply(units, function(u) derivatives(d[d$unit == u, ])); all <- Reduce(function(a, b) list(g = a$g + b$g, h = a$h + b$h), parts)
steps <- sapply(parts, function(u) solve(-(all$h - u$h), -u$g))
jackknife <- (n - 1) / n * (steps - rowMeans(steps)) %*% t(steps - rowMeans(steps)); information <- solve(-all$h)

mean_to <- function(T, b, e) e / b * gamma(1 / b) * pgamma((T / e)^b, 1 / b); mean_life <- function(b, e) e * gamma(1 + 1 / b)
cost <- function(T, b, e, cf) (cf - (cf - 1) * exp(-(T / e)^b)) / mean_to(T, b, e)
best <- function(b, e, cf) {
  gap <- function(l) { T <- exp(l); b / e * (T / e)^(b - 1) * mean_to(T, b, e) + expm1(-(T / e)^b) - 1 / (cf - 1) }
  high <- log(e * 1e6); if (gap(high) < 0) Inf else uniroot(gap, c(log(e) - 20, high), tol = 1e-13)$root
}
ratio <- 20; until <- 40; risk <- .2
age <- exp(best(exp(p[2]), exp(p[1]), ratio))
quantities <- list(
  shape = function(q) q[2],
  age = function(q) if (q[2] <= 0) Inf else best(exp(q[2]), exp(q[1]), ratio), # its logarithm
  saved = function(q) 1 - cost(age, exp(q[2]), exp(q[1]), ratio) * mean_life(exp(q[2]), exp(q[1])) / ratio,
  look = function(q) { b <- exp(q[2]); e <- exp(q[1]); H <- (until / e)^b; a <- -log1p(-risk)
    if (H <= a) until else if (b >= 1) until - e * (H - a)^(1 / b) else e * a^(1 / b) })
edge <- function(v, angle, reach) { L <- t(chol(v)); p + reach * drop(L %*% c(cos(angle), sin(angle))) }
limit <- function(f, side, reach) max(sapply(list(information, jackknife), function(v) {
  grid <- seq(0, 2 * pi, length.out = 721); y <- sapply(grid, function(a) side * f(edge(v, a, reach))); if (max(y) == Inf) return(Inf)
  optimize(function(a) side * f(edge(v, a, reach)), grid[which.max(y)] + c(-.02, .02), maximum = TRUE, tol = 1e-10)$objective })) * side
limits <- function(f, confidence) { reach <- qt((1 + confidence) / 2, n - 1); c(f(p), limit(f, -1, reach), limit(f, 1, reach)) }
values <- c(lapply(quantities, limits, .95), lapply(setNames(quantities, paste0(names(quantities), "_80")), limits, .8))
for (v in c("shape", "age", "shape_80", "age_80")) values[[v]] <- exp(values[[v]])
direct <- optimize(function(l) cost(exp(l), exp(p[2]), exp(p[1]), ratio), c(0, 6), tol = 1e-10)
golden("renewal-on-units", "Renewal age, its saving and longest look interval of a fitted Weibull life, limits over the ellipses of the information and of a jackknife over units",
  "interval-censored lives of breast-cosmesis-two-arms, second arm, eight units; fit by survreg of the R package survival; age: Barlow and Proschan 1965; look: IEC 61649",
  parameters = list(cost_ratio = ratio, until = until, risk = risk), expected = lapply(values, I), rel = 2e-5, abs = 1e-8,
  checks = list("direct minimisation of the cost" = abs(exp(direct$minimum) / age - 1) < 1e-4, "survreg's variance" = max(abs(f$var * c(1, -1, -1, 1) / information - 1)) < 1e-4))
print(values)
