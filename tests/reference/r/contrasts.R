# Two sets of units, each with lives, against each other.  Run in this folder: Rscript contrasts.R
script_name <- "contrasts.R"
source("golden.R"); source("life_functions.R")

x <- read.csv("../breast-cosmesis-two-arms/data.csv")
x$unit <- ave(x$arm, x$arm, FUN = seq_along) %% 8 # eight units in each arm, dealt in turn
x$upper[is.na(x$upper)] <- Inf
y <- Surv(ifelse(x$lower == 0, NA, x$lower), ifelse(is.finite(x$upper), x$upper, NA), type = "interval2")
control <- survreg.control(rel.tolerance = 1e-13, maxiter = 200)
loglik <- function(dist, p, d) {
  z <- function(t) (log(t) - p[1]) / exp(p[2])
  survival <- function(t) if (dist == "weibull") exp(-exp(z(t))) else pnorm(z(t), lower.tail = FALSE)
  density <- function(t) (if (dist == "weibull") exp(z(t) - exp(z(t))) else dnorm(z(t))) / (exp(p[2]) * t)
  sum(log(ifelse(d$lower == d$upper, density(d$upper), survival(d$lower) - survival(d$upper))))
}
# Central differences of fourth order: exact to some 1e-9 here, far beyond the tolerance.
derivatives <- function(f, p, h = 2e-3) {
  first <- function(f, p, i) { e <- replace(c(0, 0), i, h); (8 * (f(p + e) - f(p - e)) - (f(p + 2 * e) - f(p - 2 * e))) / (12 * h) }
  list(g = c(first(f, p, 1), first(f, p, 2)), h = outer(1:2, 1:2, Vectorize(function(i, j) first(function(q) first(f, q, j), p, i))))
}
side <- function(dist, arm) {
  keep <- x$arm == arm
  fit <- function(rows) survreg(y[rows] ~ 1, dist = dist, control = control)
  log_median <- function(f) unname(predict(f, newdata = data.frame(one = 1), type = "uquantile", p = 0.5))
  f <- fit(keep); unit <- x$unit[keep]; k <- length(unique(unit))
  m <- predict(f, newdata = data.frame(one = 1), type = "uquantile", p = 0.5, se.fit = TRUE)
  # Gradient and Hessian of each unit's log-likelihood in mu and ln sigma; one Newton step with the unit left out.
  units <- lapply(sort(unique(unit)), function(u) derivatives(function(p) loglik(dist, p, x[keep & x$unit == u, ]), c(coef(f), log(f$scale))))
  all <- Reduce(function(a, b) list(g = a$g + b$g, h = a$h + b$h), units)
  gradient <- c(1, m$fit[1] - coef(f)) # ln median = mu + z sigma
  step <- vapply(units, function(u) sum(gradient * solve(-(all$h - u$h), -u$g)), 0)
  refit <- vapply(sort(unique(unit)), function(u) log_median(fit(keep & x$unit != u)), 0)
  spread <- function(v) (k - 1) / k * sum((v - mean(v))^2)
  list(median = unname(m$fit[1]), variance = unname(m$se.fit[1])^2, jackknife = spread(step), refitted = spread(refit), k = k)
}
both <- function(dist) {
  a <- side(dist, 1); b <- side(dist, 2); df <- a$k + b$k - 2
  effect <- ((a$k - 1) * a$jackknife / a$variance + (b$k - 1) * b$jackknife / b$variance) / df
  log_ratio <- a$median - b$median; se <- sqrt(effect * (a$variance + b$variance))
  list(ratio = exp(log_ratio), lower = exp(log_ratio - qt(.975, df) * se), upper = exp(log_ratio + qt(.975, df) * se),
       design_effect = effect, p = 2 * pt(-abs(log_ratio) / se, df), refitted = c(a$refitted / a$jackknife, b$refitted / b$jackknife))
}
w <- both("weibull"); l <- both("lognormal")
close <- function(r) all(abs(r - 1) < 0.25)
golden("two-arms-contrast", "Ratio of medians where units of lives are independent: one-step jackknife over units, Student's t",
  "interval-censored lives of breast-cosmesis-two-arms, eight units in each arm dealt in turn; fits and standard errors by survreg of the R package survival",
  expected = nine(list(weibull = w[-6], lognormal = l[-6])), rel = 1e-5, abs = 1e-8,
  checks = list("the jackknife by eight refits, within a quarter" = close(c(w$refitted, l$refitted))))
cat(w$refitted, l$refitted, "\n")
