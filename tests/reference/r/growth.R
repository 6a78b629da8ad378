# Growth of recurring events between looks, with limits on units that differ.  Run in this folder: Rscript growth.R
script_name <- "growth.R"
source("golden.R")

set.seed(20261127); n <- 8 # units of different levels, looked at irregularly, some from late on
d <- do.call(rbind, lapply(1:n, function(u) {
  cuts <- round(cumsum(c(runif(1, 0, 900) * (u > 3), runif(12, 60, 140))), 1)
  level <- rgamma(1, 4, 4) * .004; start <- head(cuts, -1); stop <- tail(cuts, -1); places <- 1 + u %% 3
  data.frame(unit = u, start, stop, exposure = round(places * (stop - start), 1), events = rpois(12, level * places * ((start + stop) / 1200)^.8 * (stop - start)))
}))
logmean <- list( # of one span, by quadrature
  loglinear = function(b, r) log(r$exposure) + log(mapply(function(a, z) integrate(function(t) exp(b * t), a, z, rel.tol = 1e-12)$value / (z - a), r$start, r$stop)),
  power = function(b, r) log(r$exposure / (r$stop - r$start)) + log(r$stop^b - r$start^b))
fit <- function(law, own, range, none) {
  f <- logmean[[law]]; first <- function(g, b, h = 1e-4 * diff(range)) (8 * (g(b + h) - g(b - h)) - (g(b + 2 * h) - g(b - 2 * h))) / (12 * h)
  slopes <- function(b) { # per span: chance within its unit or within all, and the slope of its logarithm
    m <- f(b, d); group <- if (own) d$unit else rep(1, nrow(d)); p <- exp(m) / ave(exp(m), group, FUN = sum)
    s <- first(function(q) f(q, d), b); list(p = p, s = s, n = ave(d$events, group, FUN = sum), mean = ave(p * s, group, FUN = sum))
  }
  score <- function(b) { q <- slopes(b); tapply((d$events - q$n * q$p) * (q$s - q$mean), d$unit, sum) }
  loglik <- function(b) { m <- f(b, d); group <- if (own) d$unit else rep(1, nrow(d)); sum(d$events * (m - log(ave(exp(m), group, FUN = sum)))) }
  b <- uniroot(function(b) sum(score(b)), range, tol = 1e-12)$root
  q <- slopes(b); second <- first(function(a) first(function(c) f(c, d), a), b) # of the logarithm of each span's mean
  info <- tapply(q$n * q$p * (second + (q$s - q$mean)^2) - d$events * second, d$unit, sum)
  known <- tapply(q$n * q$p * (q$s - q$mean)^2, d$unit, sum) # expected: what each unit has of it
  single <- 1 / sqrt(sum(info)); power <- if (own) 1 else 2
  robust <- sqrt(sum(score(b)^2 / (1 - known / sum(known))^power)) / sum(info)
  x <- tapply(d$events, d$unit, sum); degrees <- max(1, round(sum(x)^2 / sum(x^2)) - 1)
  reach <- max(qt(.975, degrees) * robust, qnorm(.975) * single)
  list(growth = b, lower = b - reach, upper = b + reach, p = max(2 * pt(-abs(b - none) / robust, degrees), 2 * pnorm(-abs(b - none) / single)),
       checks = c(optimize(loglik, range, maximum = TRUE, tol = 1e-9)$maximum / b - 1, -first(function(a) sum(score(a)), b) / sum(info) - 1))
}
a <- fit("loglinear", TRUE, c(-.004, .008), 0); b <- fit("power", FALSE, c(.2, 4), 1); k <- function(v) v[-5]
mid <- glm(events ~ factor(unit) + I((start + stop) / 2), poisson, d, offset = log(exposure))
golden("growth-eight-units", "Growth of recurring events between looks: log-linear with a level per unit, power law with a common level; variance by clusters",
  "constructed: simulated spans of eight units, seed 20261127; maximum of the conditional likelihood, scores and information by differences",
  table = d, expected = list(loglinear = k(a), power = k(b)), rel = 1e-5, abs = 1e-9,
  checks = list("the maximum itself" = max(abs(c(a$checks[1], b$checks[1]))) < 1e-4, "the slope of the score" = max(abs(c(a$checks[2], b$checks[2]))) < 1e-4,
    "R's Poisson regression on unit and the middle of the span, within two percent" = abs(coef(mid)[n + 1] / a$growth - 1) < .02))
str(a); str(b)
