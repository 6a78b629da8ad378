# Times one task on one file in a process of its own: Rscript time.R TASK FILE. Reading the file is not counted.
# Prints RESULT,seconds,value value ...  Each task is the fastest way known to do it in R.
suppressMessages(library(survival)); arguments <- commandArgs(TRUE); task <- arguments[1]
d <- as.data.frame(lapply(read.csv(arguments[2], colClasses = "numeric"), as.numeric))
upper <- if (!is.null(d$upper)) ifelse(is.na(d$upper), Inf, d$upper)
negative_loglik <- function(th) {
  b <- exp(th[2]); H <- function(t) exp(b * (log(t) - th[1])); low <- H(d$lower)
  -sum(ifelse(is.infinite(upper), -low, -low + log(-expm1(-(H(upper) - low)))) + H(d$entry))
}
# Largest derivative of the log-likelihood in a candidate's mass, less the number of lives: how much the fit can still gain.
npmle_gap <- function(f) {
  cdf <- function(t) c(0, cumsum(f$p))[findInterval(t, f$right) + 1]
  share <- 1 / (ifelse(is.infinite(upper), 1, cdf(upper)) - cdf(d$lower)); q <- sort(unique(d$lower))
  up <- function(x) { o <- order(x); c(0, cumsum(share[o]))[findInterval(q, x[o]) + 1] }
  max(up(d$lower) - up(upper)) - nrow(d)
}
values <- NULL; after <- NULL
seconds <- system.time({
  if (task == "kaplan-meier") { s <- survfit(Surv(time, status) ~ 1, d); q <- summary(s, times = c(200, 500, 900, 1300)); values <- c(q$surv, q$std.err) }
  if (task == "weibull-survreg") {
    lo <- ifelse(d$lower == 0, NA, d$lower); k <- d$lower > 0 | !is.na(d$upper)
    s <- survreg(Surv(lo[k], d$upper[k], type = "interval2") ~ 1); values <- c(1 / s$scale, exp(coef(s)), s$loglik[1])
  }
  if (task == "weibull-optim") {
    o <- optim(c(log(900), log(2)), negative_loglik, method = "BFGS", hessian = TRUE, control = list(reltol = 1e-12)); se <- sqrt(diag(solve(o$hessian)))
    values <- c(exp(o$par[2]), exp(o$par[1]), -o$value, se[2] * exp(o$par[2]), se[1] * exp(o$par[1]))
  }
  if (task == "npsurv") { x <- npsurv::npsurv(cbind(d$lower, upper)); after <- x$f }
  if (task == "npsurv-grouped") { g <- aggregate(n ~ lower + upper, data.frame(lower = d$lower, upper = upper, n = 1), sum); x <- npsurv::npsurv(cbind(g$lower, g$upper), w = g$n); after <- x$f }
  if (task == "mcf-survfit") { s <- survfit(Surv(start, stop, status) ~ 1, d, id = id); i <- findInterval(c(500, 1000, 1500, 2000), s$time); values <- c(s$cumhaz[i], s$std.chaz[i]) }
  if (task == "mcf-four-times") {
    e <- sort(d$stop[d$status == 1]); out <- sort(d$stop[d$status == 0]); u <- unique(e); dn <- tabulate(match(e, u)); risk <- length(out) - findInterval(u, out, left.open = TRUE)
    M <- cumsum(dn / risk); i <- findInterval(c(500, 1000, 1500, 2000), u); unit <- d$id[d$status == 0]; end <- d$stop[d$status == 0]
    robust <- sapply(i, function(k) {
      A <- cumsum(dn[1:k] / risk[1:k]^2); on <- d$status == 1 & d$stop <= u[k]
      z <- rowsum(c(1 / risk[match(d$stop[on], u)], rep(0, length(unit))), c(d$id[on], unit))[, 1]; j <- findInterval(pmin(end, u[k]), u)
      sum((z[as.character(unit)] - ifelse(j > 0, A[pmax(j, 1)], 0))^2) })
    values <- c(M[i], sqrt(robust))
  }
})[3]
if (!is.null(after)) values <- c(x$ll, npmle_gap(after), 1 - sapply(c(300, 600, 900, 1200), function(t) sum(after$p[after$right <= t])))
cat(sprintf("RESULT,%.3f,%s\n", seconds, paste(sprintf("%.12g", values), collapse = " ")))
