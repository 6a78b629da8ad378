# Chances ahead of parts that are still good, with limits from the covariance of the fit.  Run in this folder: Rscript chances.R
# The fit and its covariance are those of the survival package; derivatives are central differences.
script_name <- "chances.R"
source("golden.R"); source("life_functions.R")

days <- cracks$days; n <- c(cracks$fail, 167 - sum(cracks$fail))
d <- lives(c(0, days), c(days, Inf), count = n)
y <- with(d, Surv(ifelse(lower == 0, NA, lower), ifelse(is.infinite(upper), NA, upper), type = "interval2"))
hazard <- list(
  weibull = function(t, th) (t / exp(th[1]))^exp(-th[2]),
  lognormal = function(t, th) -pnorm((log(t) - th[1]) / exp(th[2]), lower.tail = FALSE, log.p = TRUE))
slope <- function(f, th) sapply(1:2, function(i) { h <- 1e-5; e <- replace(c(0, 0), i, h); (f(th + e) - f(th - e)) / (2 * h) })

ages <- c(0, 0, 600, 1932, 3000); ahead <- c(100, 600, 300, 300, 500); z <- qnorm(.975)
of <- function(dist) {
  fit <- survreg(y ~ 1, d, weights = count, dist = dist, control = list(rel.tolerance = 1e-13, maxiter = 200))
  th <- c(unname(coef(fit)), log(fit$scale)); V <- fit$var
  H <- hazard[[dist]]
  chance <- function(i, th) 1 - exp(-(H(ages[i] + ahead[i], th) - if (ages[i] > 0) H(ages[i], th) else 0))
  lnh <- function(i, th) log(-log(1 - chance(i, th)))
  p <- sapply(seq_along(ages), chance, th = th)
  se <- sapply(seq_along(ages), function(i) { g <- slope(function(t) lnh(i, t), th); sqrt(drop(g %*% V %*% g)) })
  v <- log(-log(1 - p))
  g <- slope(function(t) sum(sapply(seq_along(ages), chance, th = t)), th); sum_se <- sqrt(drop(g %*% V %*% g)); total <- sum(p)
  list(chance = I(p), lower = I(1 - exp(-exp(v - z * se))), upper = I(1 - exp(-exp(v + z * se))),
       sum = total, sum_interval = I(total * exp(c(-1, 1) * z * sum_se / total)))
}
w <- of("weibull"); l <- of("lognormal")
# By hand for the Weibull: h = (later^k - now^k) / scale^k.
k <- exp(-(-0.3953)); s <- exp(7.6880)
golden("chances-crack-inspections", "Chance to fail in the hours ahead given good at an age, and its sum over parts, with delta-method limits; Weibull and lognormal",
  "Nelson 1982 p. 415, 167 parts in days; fit and covariance of R's survival package; delta method of Meeker and Escobar 1998, section 8.4.3", table = as_table(d),
  parameters = list(age = I(ages), ahead = I(ahead)), expected = nine(list(weibull = w, lognormal = l)), rel = 1e-5, abs = 1e-8,
  checks = list("the published Weibull" = abs(w$chance[3] - (1 - exp(-((900 / s)^k - (600 / s)^k)))) < 1e-4))
