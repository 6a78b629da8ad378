# Reference computations for lives, in base R: slow, plain, and different in method from the library under test.
# Derivatives come from complex steps, the maximum from BFGS then Newton, the profile from one-dimensional searches.
suppressMessages(library(survival))

# Nine digits: beyond every tolerance used, and steady against the last bits of a search.
nine <- function(x, digits = 9) if (is.list(x)) lapply(x, nine, digits) else if (is.numeric(x)) { y <- signif(x, digits); if (inherits(x, "AsIs")) I(y) else y } else x

lives <- function(lower, upper, entry = 0, count = 1) {
  upper[is.na(upper)] <- Inf
  data.frame(lower = lower, upper = upper, entry = rep_len(entry, length(lower)), count = rep_len(count, length(lower)))
}
as_table <- function(d) { d$upper[is.infinite(d$upper)] <- NA; d }

# exp(z) - 1 for complex z, by its series near zero.
complex_expm1 <- function(z) ifelse(Mod(z) < 1e-3, z * (1 + z/2 * (1 + z/3 * (1 + z/4 * (1 + z/5 * (1 + z/6))))), exp(z) - 1)

# Weibull log-likelihood at th = (ln scale, ln shape): ln f, ln S or ln(S(lower) - S(upper)), each less ln S(entry).
weibull_terms <- function(th, d) {
  b <- exp(th[2]); logt <- function(t) log(t + 0i)
  H <- function(t) { r <- exp(b * (logt(pmax(t, 1e-300)) - th[1])); r[t == 0] <- 0; r }
  exact <- d$lower == d$upper; right <- is.infinite(d$upper); between <- !exact & !right
  out <- complex(nrow(d))
  if (any(exact)) out[exact] <- th[2] + (b - 1) * logt(d$lower[exact]) - b * th[1] - H(d$lower[exact])
  if (any(right)) out[right] <- -H(d$lower[right])
  if (any(between)) {
    # H(upper) - H(lower) without cancelling where the ends are close.
    from <- d$lower[between]; to <- d$upper[between]; low <- H(from)
    more <- ifelse(from > 0, low * complex_expm1(b * log1p((to - from) / pmax(from, 1e-300))), H(to))
    out[between] <- -low + log(-complex_expm1(-more))
  }
  d$count * (out + H(d$entry))
}
weibull_loglik <- function(th, d) sum(weibull_terms(th, d))
weibull_score <- function(th, d) sapply(1:2, function(j) { e <- complex(real = th); e[j] <- e[j] + 1i * 1e-30; Im(weibull_loglik(e, d)) / 1e-30 })
weibull_hessian <- function(th, d) {
  by <- function(h) sapply(1:2, function(j) { e <- c(0, 0); e[j] <- h; (weibull_score(th + e, d) - weibull_score(th - e, d)) / (2 * h) })
  H <- (4 * by(5e-4) - by(1e-3)) / 3
  (H + t(H)) / 2
}
weibull_fit <- function(d, p = c(.1, .5), t = NULL, conditional = NULL, start = NULL, profile = TRUE, conf = .95) {
  if (is.null(start)) {
    middle <- ifelse(is.infinite(d$upper), d$lower, (d$lower + d$upper) / 2)
    start <- c(log(sum(d$count * pmax(middle, 1e-8)) / max(1, sum(d$count[is.finite(d$upper)]))), 0)
  }
  ll <- function(x) Re(weibull_loglik(x, d))
  th <- optim(start, function(x) -ll(x), gr = function(x) -weibull_score(x, d), method = "BFGS", control = list(reltol = 1e-14, maxit = 1000))$par
  for (i in 1:50) {
    s <- solve(weibull_hessian(th, d), weibull_score(th, d)); k <- 1
    while (ll(th - k * s) < ll(th) - 1e-9 * abs(ll(th)) && k > 1e-6) k <- k / 2
    th <- th - k * s
    if (max(abs(s)) < 1e-13) break
  }
  V <- solve(-weibull_hessian(th, d)); top <- ll(th); scale <- exp(th[1]); shape <- exp(th[2])
  out <- list(shape = shape, scale = scale, loglik = top, aic = 4 - 2 * top, se_shape = shape * sqrt(V[2, 2]), se_scale = scale * sqrt(V[1, 1]),
              var_logscale = V[1, 1], var_logshape = V[2, 2], cov_logscale_logshape = V[1, 2], cov_shape_scale = shape * scale * V[1, 2])
  # Normal limits on the logarithm.
  wald <- function(value, variance) I(value * exp(c(-1, 1) * qnorm((1 + conf) / 2) * sqrt(variance)))
  out$shape_wald <- wald(shape, V[2, 2]); out$scale_wald <- wald(scale, V[1, 1])
  if (length(p)) {
    out$quantile_p <- I(p); out$quantile <- I(scale * (-log(1 - p))^(1 / shape))
    limits <- sapply(seq_along(p), function(i) { g <- c(1, -log(-log(1 - p[i])) / shape); wald(out$quantile[i], drop(g %*% V %*% g)) })
    out$quantile_wald_lower <- I(limits[1, ]); out$quantile_wald_upper <- I(limits[2, ])
  }
  if (length(t)) { out$age <- I(t); out$survival <- I(exp(-(t / scale)^shape)) }
  if (profile) {
    cut <- top - qchisq(conf, 1) / 2
    # Profile of a quantity v: th at given v and the free coordinate y.
    limits <- function(at, v0, se, y0, width) {
      f <- function(v) optimize(function(y) ll(at(v, y)), y0 + c(-1, 1) * width, maximum = TRUE, tol = 1e-12)$objective - cut
      side <- function(s) { far <- v0 + s * se; while (f(far) > 0) far <- far + s * se; uniroot(f, sort(c(v0, far)), tol = 1e-12)$root }
      c(side(-1), side(1))
    }
    w <- 8 * sqrt(diag(V))
    out$shape_interval <- I(exp(limits(function(v, y) c(y, v), th[2], sqrt(V[2, 2]), th[1], w[1])))
    out$scale_interval <- I(exp(limits(function(v, y) c(v, y), th[1], sqrt(V[1, 1]), th[2], w[2])))
    for (i in seq_along(p)) {
      z <- log(-log(1 - p[i])); g <- c(1, -z / shape)
      out[[paste0("quantile_interval_", p[i])]] <- I(exp(limits(function(v, y) c(v - z / exp(y), y), log(out$quantile[i]), sqrt(drop(g %*% V %*% g)), th[2], w[2])))
    }
    for (i in seq_along(t)) {
      z <- shape * (log(t[i]) - th[1]); g <- c(-shape, z)
      v <- limits(function(v, y) c(log(t[i]) - v / exp(y), y), z, sqrt(drop(g %*% V %*% g)), th[2], w[2])
      out[[paste0("survival_interval_", t[i])]] <- I(rev(exp(-exp(v))))
    }
    if (length(conditional)) {
      a <- conditional[1]; b <- sum(conditional); h <- (b / scale)^shape - (a / scale)^shape
      at <- function(v, y) c((log(b^exp(y) - a^exp(y)) - v) / exp(y), y)
      out$conditional <- -expm1(-h)
      out$conditional_interval <- I(-expm1(-exp(limits(at, log(h), .5, th[2], w[2]))))
    }
  }
  out
}

# Fits of the other families by direct maximisation of sums of the distribution functions R ships with.
family_fit <- function(d, survival, density, start) {
  terms <- function(th) {
    s <- function(t) ifelse(t == 0, 1, ifelse(is.infinite(t), 0, survival(t, th)))
    ifelse(d$lower == d$upper, log(density(pmax(d$lower, 1e-300), th)), log(s(d$lower) - s(d$upper))) - log(s(d$entry))
  }
  f <- function(th) { v <- -sum(d$count * terms(th)); if (is.finite(v)) v else 1e10 }
  o <- optim(start, f, control = list(reltol = 1e-15, maxit = 5000))
  for (i in 1:5) o <- optim(o$par, f, control = list(reltol = 1e-16, maxit = 5000))
  list(par = o$par, loglik = -o$value)
}
lognormal_fit <- function(d, start) family_fit(d, function(t, th) plnorm(t, th[1], exp(th[2]), lower.tail = FALSE), function(t, th) dlnorm(t, th[1], exp(th[2])), start)
loglogistic_fit <- function(d, start) family_fit(d, function(t, th) plogis((log(t) - th[1]) / exp(th[2]), lower.tail = FALSE), function(t, th) dlogis((log(t) - th[1]) / exp(th[2])) / exp(th[2]) / t, start)

# Non-parametric maximum likelihood without truncation: EM on the candidate intervals, then Newton on the masses above zero.
npmle <- function(lower, upper, count = rep(1, length(lower)), iter = 20000) {
  upper[is.na(upper)] <- Inf
  ends <- rbind(data.frame(x = lower, kind = ifelse(lower == upper, 0, 2)), data.frame(x = upper, kind = 1))
  ends <- ends[order(ends$x, ends$kind), ]; is_left <- ends$kind != 1
  i <- which(is_left[-length(is_left)] & !is_left[-1]); q <- ends$x[i]; p <- ends$x[i + 1]
  keep <- !duplicated(paste(q, p)); q <- q[keep]; p <- p[keep]
  A <- outer(seq_along(lower), seq_along(q), Vectorize(function(a, b)
    if (lower[a] == upper[a]) q[b] == lower[a] && p[b] == lower[a] else if (q[b] == p[b]) q[b] > lower[a] && q[b] <= upper[a] else q[b] >= lower[a] && p[b] <= upper[a])) * 1
  pr <- rep(1 / length(q), length(q))
  for (it in 1:iter) {
    new <- pr * drop(t(A) %*% (count / drop(A %*% pr))) / sum(count)
    if (max(abs(new - pr)) < 1e-13) { pr <- new; break }
    pr <- new
  }
  active <- pr > 1e-7
  for (round in 1:50) {
    idx <- which(active); x <- pr[idx] / sum(pr[idx]); B <- A[, idx, drop = FALSE]
    for (it in 1:100) {
      f <- drop(B %*% x); g <- drop(t(B) %*% (count / f)); H <- -t(B) %*% (B * (count / f^2)); k <- length(x)
      s <- tryCatch(qr.solve(rbind(cbind(H - 1e-12 * diag(k), 1), c(rep(1, k), 0)), c(-g, 0))[1:k], error = function(e) rep(0, k))
      st <- 1; while (any(x + st * s <= 0) && st > 1e-12) st <- st / 2
      x <- x + st * s
      if (max(abs(s)) < 1e-15) break
    }
    pr <- numeric(length(q)); pr[idx] <- x
    D <- drop(t(A) %*% (count / drop(A %*% pr))) / sum(count)
    bad <- which(!active & D > 1 + 1e-9); tiny <- idx[x < 1e-12]
    if (!length(bad) && !length(tiny)) break
    active[tiny] <- FALSE; active[bad] <- TRUE; pr[bad] <- 1e-4; pr <- pr / sum(pr)
  }
  k <- pr > 1e-9
  list(candidate_lower = I(q), candidate_upper = I(p), lower = I(q[k]), upper = I(p[k]), mass = I(pr[k]), loglik = sum(count * log(drop(A %*% pr))), largest_derivative = max(D))
}
masses <- function(f) f[c("lower", "upper", "mass", "loglik")]
bounds <- function(f, at) list(least = I(sapply(at, function(t) sum(f$mass[f$upper <= t]))), greatest = I(sapply(at, function(t) sum(f$mass[f$lower < t]))))

# Kaplan-Meier at the ages with failures, and its limits of one kind.
points <- function(s) {
  k <- s$n.event > 0
  list(age = I(s$time[k]), at_risk = I(s$n.risk[k]), failures = I(s$n.event[k]), survival = I(s$surv[k]), se = I(ifelse(s$surv[k] > 0, s$std.err[k] * s$surv[k], 0)), hazard = I(s$cumhaz[k]), hazard_se = I(s$std.chaz[k]))
}
limits <- function(y, kind) { s <- survfit(y ~ 1, conf.type = kind); k <- s$n.event > 0; list(lower = I(s$lower[k]), upper = I(s$upper[k])) }

# Two groups of one Weibull shape: survreg; limits of the scale ratio from its fits at a fixed ratio (offset).
common_shape <- function(lower, upper, second) {
  y <- Surv(ifelse(lower == 0, NA, lower), upper, type = "interval2"); control <- survreg.control(rel.tolerance = 1e-14, maxiter = 200); x <- second * 1
  s <- survreg(y ~ x, control = control); pooled <- survreg(y ~ 1, control = control)$loglik[2]; top <- s$loglik[2]; b <- unname(coef(s)); se <- sqrt(s$var[2, 2])
  apart <- survreg(y[x == 0] ~ 1, control = control)$loglik[2] + survreg(y[x == 1] ~ 1, control = control)$loglik[2]
  down <- function(v) survreg(y ~ offset(v * x), control = control)$loglik[2] - (top - qchisq(.95, 1) / 2)
  list(shape = 1 / s$scale, sigma = s$scale, se_shape = sqrt(s$var[3, 3]) / s$scale, first_mu = b[1], first_scale = exp(b[1]), log_scale_ratio = b[2], se_log_scale_ratio = se, log_hazard_ratio = -b[2] / s$scale, loglik = top,
    log_ratio_interval = I(c(uniroot(down, b[2] + c(-6, 0) * se, tol = 1e-11)$root, uniroot(down, b[2] + c(0, 6) * se, tol = 1e-11)$root)),
    lr_equal_scales = 2 * (top - pooled), lr_equal_scales_p = pchisq(2 * (top - pooled), 1, lower.tail = FALSE), lr_equal_shapes = 2 * (apart - top))
}
