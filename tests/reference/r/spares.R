# Parts that will be needed, failures being found at looks and renewed there.  Run in this folder: Rscript spares.R
# Every pattern of failures at the looks of a position is written out one by one; positions are summed by fft. Fits are those of the survival package.
script_name <- "spares.R"
source("golden.R"); source("life_functions.R")

survives <- list(
  weibull = function(t, th) exp(-(t / exp(th[1]))^exp(-th[2])),
  lognormal = function(t, th) plnorm(t, th[1], exp(th[2]), lower.tail = FALSE))
good <- c(0, 150, 300, 420, 600, 780); age <- good + c(0, 30, 60, 90, 20, 50)
to_look <- c(100, 70, 40, 10, 80, 50); ahead <- c(330, 280, 390, 330, 250, 350); every <- 100

position <- function(i, S, th) {
  looks <- if (ahead[i] < to_look[i]) 0 else 1 + floor((ahead[i] - to_look[i]) / every)
  p <- numeric(looks + 1)
  for (code in 0:(2^looks - 1)) {
    fails <- bitwAnd(code, 2^(seq_len(looks) - 1)) > 0
    a <- good[i]; b <- age[i] + to_look[i]; chance <- 1
    for (l in seq_len(looks)) {
      stay <- S(b, th) / S(a, th)
      if (fails[l]) { chance <- chance * (1 - stay); a <- 0; b <- every } else { chance <- chance * stay; a <- b; b <- b + every }
    }
    p[sum(fails) + 1] <- p[sum(fails) + 1] + chance
  }
  p
}
total <- function(S, th) {
  n <- 64; f <- rep(1 + 0i, n)
  for (i in seq_along(good)) { p <- position(i, S, th); f <- f * fft(c(p, numeric(n - length(p)))) }
  Re(fft(f, inverse = TRUE)) / n
}
ten <- function(p) c(p[1:9], sum(p[-(1:9)]))
layout <- list(good = I(good), age = I(age), to_look = I(to_look), ahead = I(ahead), look_hours = every)

known <- list(weibull = c(log(500), -log(2.5)), lognormal = c(log(450), log(.5)))
at <- lapply(names(known), function(d) ten(total(survives[[d]], known[[d]]))); names(at) <- names(known)
golden("spares-known-life", "Parts needed at six positions, each looked at every 100 h; the life is known", "every pattern of failures at the looks, summed by fft; R's pweibull and plnorm",
  parameters = c(layout, lapply(known, function(th) list(scale = exp(th[1]), shape = exp(-th[2])))), rel = 1e-9, abs = 1e-11, expected = lapply(at, I),
  checks = list("chances sum to one" = max(abs(sapply(at, sum) - 1)) < 1e-9))

# Lives of 24 parts that are looked at every 100 h, 14 of which failed; the life is not known, only fitted.
d <- lives(c(200, 300, 300, 400, 400, 400, 500, 500, 500, 600, 600, 700, 800, 900, 150, 250, 300, 350, 450, 500, 550, 650, 700, 750),
           c(300, 400, 400, 500, 500, 500, 600, 600, 600, 700, 700, 800, 900, 1000, rep(Inf, 10)))
y <- with(d, Surv(lower, ifelse(is.infinite(upper), NA, upper), type = "interval2"))
set.seed(20261127)
of <- function(dist) {
  fit <- survreg(y ~ 1, d, dist = dist, control = list(rel.tolerance = 1e-13, maxiter = 200)); th <- c(unname(coef(fit)), log(fit$scale))
  draws <- t(th + t(chol(fit$var)) %*% matrix(rnorm(8000), 2))
  p <- rowMeans(apply(draws, 1, function(t) total(survives[[dist]], t))); alone <- total(survives[[dist]], th)
  stopifnot(max(abs(p - alone)) > .02) # so that not knowing the life shows
  list(chances = I(ten(p)), stock_95 = which(cumsum(p) >= .95)[1] - 1)
}
golden("spares-fitted-life", "The same positions, the life fitted to 24 lives with 14 failures", "mean over 4,000 draws from the normal law of the fitted parameters (Meeker and Escobar 1998, chapter 12); fit and covariance of R's survival package",
  table = as_table(d), parameters = layout, rel = 0, abs = .006, expected = list(weibull = of("weibull"), lognormal = of("lognormal")))
