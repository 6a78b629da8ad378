# Kaplan-Meier and comparisons of groups.  Run in this folder: Rscript survival.R
script_name <- "survival.R"
source("golden.R"); source("life_functions.R")
library(KMsurv)
case <- function(id, method, source, d, expected, ..., rel = 1e-8, abs = 1e-11) golden(id, method, source, table = d, expected = expected, ..., rel = rel, abs = abs)
rows <- function(time, status, entry = 0) as_table(lives(time, ifelse(status == 1, time, Inf), entry))

time <- c(10, 32, 56, 98, 122, 181, 50, 100, 125, 150, rep(200, 10)); status <- c(rep(1, 6), rep(0, 14)); y <- Surv(time, status); s <- survfit(y ~ 1)
case("nist-8.2.1.5-kaplan-meier", "Kaplan-Meier, multiply censored, 20 units", "NIST/SEMATECH e-Handbook 8.2.1.5: R(10) = 19/20, R(32) = 19/20 x 18/19, ...", rows(time, status),
  c(points(s), list(plain = limits(y, "plain"), log = limits(y, "log"), loglog = limits(y, "log-log"), modified = I(1 - (20 + .7) / (20 + .4) * cumprod(((s$n.risk - s$n.event + .7) / (s$n.risk + .7))[s$n.event > 0])))), rel = 1e-9, abs = 1e-12,
  note = "the modified estimate's formula is from memory: survival (n + .7) / (n + .4) times the product of (at risk - .3) / (at risk + .7) over failures", checks = list("the first products" = isTRUE(all.equal(s$surv[1:2], c(19/20, 18/20)))))

data(drug6mp); y <- Surv(drug6mp$t2, drug6mp$relapse); s <- survfit(y ~ 1)
case("freireich-6mp", "Kaplan-Meier with limits, median, restricted mean; 21 patients", "Freireich and others 1963, R package KMsurv, data drug6mp; published survival .857 .807 .753 .690 .627 .538 .448", rows(drug6mp$t2, drug6mp$relapse),
  c(points(s), list(plain = limits(y, "plain"), log = limits(y, "log"), loglog = limits(y, "log-log"), logit = limits(y, "logit"), arcsine = limits(y, "arcsin"), median = unname(quantile(s, .5)$quantile), median_limits = c(unname(quantile(s, .5)$lower), Inf), mean_35 = unname(summary(s, rmean = 35)$table["rmean"]), mean_35_se = unname(summary(s, rmean = 35)$table["se(rmean)"]))),
  published = list(survival = c(.857, .807, .753, .690, .627, .538, .448)), rel = 1e-8, abs = 1e-12,
  checks = list("no upper limit of the median" = is.na(quantile(s, .5)$upper)))

t1 <- data.frame(time = c(9, 1, 1, 6, 6, 8), status = c(1, 1, 0, 1, 1, 0)); s <- survfit(Surv(time, status) ~ 1, t1)
case("six-rows-with-ties", "Kaplan-Meier and Nelson-Aalen, six rows with ties", "Therneau and Grambsch 2000, appendix, data set 1 (tests of the survival package): hazard 1/6, then + 2/4; influences in 72nds and 144ths printed there", rows(t1$time, t1$status),
  c(points(s), list(tied_hazard = I(survfit(Surv(time, status) ~ 1, t1, ctype = 2)$cumhaz[s$n.event > 0]), at_risk_at_8 = s$n.risk[s$time == 8], survival_at_8 = s$surv[s$time == 8], hazard_influence_variance = I(c(sum((c(10, rep(-2, 5)) / 72)^2), sum((c(10, -2, 7, 7, -11, -11) / 72)^2))),
    survival_influence_variance = I(c(sum((c(-20, rep(4, 5)) / 144)^2), sum((c(-10, 2, -13, -13, 17, 17) / 144)^2))))), rel = 1e-10, abs = 1e-13,
  checks = list("1/6 + 1/4 + 1/3" = isTRUE(all.equal(survfit(Surv(time, status) ~ 1, t1, ctype = 2)$cumhaz[2], 3/4))))

data(channing); ch <- subset(channing, age > ageentry & age > 816); ch$entry <- pmax(ch$ageentry, 816); s <- survfit(Surv(entry, age, death) ~ gender, ch); at <- c(840, 900, 960, 1020, 1080); q <- summary(s, times = at, extend = TRUE)
# Log-rank with late entry and the variance for ties, written out.
tt <- sort(unique(ch$age[ch$death == 1])); Y <- sapply(tt, function(t) sum(ch$entry < t & ch$age >= t)); Y1 <- sapply(tt, function(t) sum(ch$entry < t & ch$age >= t & ch$gender == 1)); D <- sapply(tt, function(t) sum(ch$age == t & ch$death == 1)); D1 <- sapply(tt, function(t) sum(ch$age == t & ch$death == 1 & ch$gender == 1))
U <- sum(D1 - D * Y1 / Y); V <- sum(ifelse(Y > 1, D * (Y1 / Y) * (1 - Y1 / Y) * (Y - D) / (Y - 1), 0))
case("channing-late-entry", "Kaplan-Meier and log-rank with late entry, conditional on 816 months", "R package KMsurv, data channing (Klein and Moeschberger 1997)", cbind(rows(ch$age, ch$death, ch$entry), group = ch$gender),
  list(age = I(at), men = list(at_risk = I(q$n.risk[1:5]), survival = I(q$surv[1:5]), se = I(q$std.err[1:5])), women = list(at_risk = I(q$n.risk[6:10]), survival = I(q$surv[6:10]), se = I(q$std.err[6:10])),
    cox_score = unname(coxph(Surv(entry, age, death) ~ I(gender == 2), ch, ties = "breslow", control = coxph.control(iter.max = 0))$score), difference = U, variance = V, chi_square = U^2 / V))

n <- nrow(drug6mp); d <- data.frame(time = c(drug6mp$t1, drug6mp$t2), status = c(rep(1, n), drug6mp$relapse), group = rep(1:2, each = n)); a <- survdiff(Surv(time, status) ~ group, d); b <- survdiff(Surv(time, status) ~ group, d, rho = 1)
tt <- sort(unique(d$time[d$status == 1])); Y <- sapply(tt, function(t) sum(d$time >= t)); Y1 <- sapply(tt, function(t) sum(d$time >= t & d$group == 1)); D <- sapply(tt, function(t) sum(d$time == t & d$status == 1)); D1 <- sapply(tt, function(t) sum(d$time == t & d$status == 1 & d$group == 1))
weighted <- function(w) { U <- sum(w * (D1 - D * Y1 / Y)); V <- sum(w^2 * ifelse(Y > 1, D * (Y1 / Y) * (1 - Y1 / Y) * (Y - D) / (Y - 1), 0)); c(U = U, V = V, chi = U^2 / V) }
cox <- function(ties) summary(coxph(Surv(time, status) ~ group, d, ties = ties, control = coxph.control(eps = 1e-13, toler.chol = 1e-15)))
case("freireich-two-arms", "Log-rank, Peto-Peto, Gehan and Tarone-Ware, two arms", "Freireich and others 1963, R package KMsurv, data drug6mp; survdiff; published log-rank chi-square 16.79 (from memory)", cbind(rows(d$time, d$status), group = d$group),
  list(observed = I(a$obs), expected = I(a$exp), variance = a$var[1, 1], log_rank = a$chisq, p = pchisq(a$chisq, 1, lower.tail = FALSE), peto_peto = b$chisq, gehan_difference = weighted(Y)[["U"]], gehan_variance = weighted(Y)[["V"]], gehan = weighted(Y)[["chi"]], tarone_ware = weighted(sqrt(Y))[["chi"]],
    breslow = list(log_ratio = cox("breslow")$coef[1], se = cox("breslow")$coef[3], score = unname(cox("breslow")$sctest["test"])), efron = list(log_ratio = cox("efron")$coef[1], se = cox("efron")$coef[3], score = unname(cox("efron")$sctest["test"]))),
  published = list(log_rank = 16.79), checks = list("the published statistic" = abs(a$chisq - 16.79) < .01))

# Interval-censored: expected counts under the pooled estimate by dense matrices; the variance by imputing ages (Rubin's rule with the sign for missing information).
compare <- function(d, group) {
  f <- npmle(d$lower, d$upper); K <- length(f$mass); fails <- is.finite(d$upper)
  A <- outer(1:nrow(d), 1:K, Vectorize(function(i, j) if (f$lower[j] == f$upper[j]) f$lower[j] > d$lower[i] - (d$lower[i] == d$upper[i]) && f$upper[j] <= d$upper[i] else f$lower[j] >= d$lower[i] && f$upper[j] <= d$upper[i])) * 1
  P <- A * rep(f$mass, each = nrow(d)); P <- P / rowSums(P); R <- t(apply(P, 1, function(p) rev(cumsum(rev(p)))))
  R[!fails, ] <- outer(d$lower[!fails], f$upper, ">=") * 1; P[!fails, ] <- 0
  first <- group == group[1]; Dj <- colSums(P); Nj <- colSums(R); k <- Nj > 1e-9
  U <- sum((colSums(P[first, ]) - Dj * colSums(R[first, ]) / Nj)[k])
  set.seed(20251); draws <- replicate(4000, {
    cell <- sapply(1:nrow(d), function(i) if (fails[i]) sample.int(K, 1, prob = P[i, ]) else sum(f$upper <= d$lower[i]) + .5)
    n <- sapply(1:K, function(j) sum(cell >= j)); n1 <- sapply(1:K, function(j) sum(cell[first] >= j)); e <- sapply(1:K, function(j) sum(cell == j)); e1 <- sapply(1:K, function(j) sum(cell[first] == j)); q <- e > 0
    c(sum((e1 - e * n1 / n)[q]), sum((e * n1 / n * (1 - n1 / n) * (n - e) / pmax(1, n - 1))[q])) })
  list(difference = U, variance_by_imputation = mean(draws[2, ]) - var(draws[1, ]))
}
x <- read.csv("../sim3-repairs/data.csv"); one <- lives(x$lower, x$upper); two <- read.csv("../breast-cosmesis-two-arms/data.csv"); other <- lives(two$lower, two$upper)
golden("interval-log-rank", "Log-rank difference for interval-censored groups: breast cosmesis arms (KMsurv bcdeter) and simulated repairs", "Sun 1996, expected counts under the pooled non-parametric estimate, dense matrices in R; variance by 4000 imputations",
  expected = nine(list(cosmesis = compare(other, two$arm), repairs = compare(one, x$method))), rel = 1e-6, abs = 1e-7)

# Exact limits with nothing censored: binom.test.
golden("exact-survival-limits", "Exact limits of survival, 12 lives, failures at 1 to 12, none censored: Clopper-Pearson at 95 percent", "R stats::binom.test", expected = list(lower = I(sapply(11:0, function(k) binom.test(k, 12)$conf.int[1])), upper = I(sapply(11:0, function(k) binom.test(k, 12)$conf.int[2]))), rel = 1e-7, abs = 1e-10)
