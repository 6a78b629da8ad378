# Renewal ages, states, demand and stock.  Run in this folder: Rscript decisions.R
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

b <- c(1.5, 2.2, 3); l <- c(1e-3, 2e-6, 1e-8); T <- (400 / (90 * l * (b - 1)))^(1 / b)
golden("block-replacement-minimal-repair", "Best renewal interval with minimal repair", "Barlow and Hunter 1960, closed form", table = data.frame(exponent = b, lambda = l),
  parameters = list(renewal = 400, repair = 90), rel = 1e-10, abs = 1e-12, expected = list(interval = T, cost = (400 + 90 * l * T^b) / T, repairs = l * T^b))

hand <- data.frame(unit = c(1,1,1,2,3,4,4,4,5,5), start = c(0,4,9,0,2,0,2,8,1,3), stop = c(4,9,10,5,9,2,8,9,3,11), to = c(1,2,1,2,3,1,3,0,2,0))
hand$from <- ave(hand$to, hand$unit, FUN = function(v) c(0, v[-length(v)]))
f <- survfit(Surv(start, stop, factor(to, 0:3, c("censor", "a", "b", "c"))) ~ 1, hand, id = unit); k <- f$time %in% c(2,3,4,5,8,9,10,11)
p <- rbind(c(24,8,0,0), c(18,8,6,0), c(12,14,6,0), c(6,14,12,0), c(6,7,12,7), c(0,0,19,13), c(0,9.5,9.5,13), c(0,9.5,9.5,13)) / 32
golden("states-hand-calculation", "Four states with late entry and re-entry, by hand in 32nds", "test suite of R's survival package (mstate), hand calculation",
  table = transform(hand[, c("unit", "start", "stop", "from", "to")], to = ifelse(to == 0, "", to)), rel = 1e-10, abs = 1e-13, expected = list(time = c(2,3,4,5,8,9,10,11), chance = p),
  checks = list("survfit with states" = isTRUE(all.equal(unname(f$pstate[k, ]), p))))

time <- with(mgus2, ifelse(pstat == 0, futime, ptime)); end <- with(mgus2, ifelse(pstat == 0, 2 * death, 1))
f <- survfit(Surv(time, factor(end, 0:2, c("censor", "progression", "death"))) ~ 1); at <- c(12, 60, 120, 180, 240, 300, 360); q <- summary(f, times = at)
# The delta method for the first end, written out.
tt <- sort(unique(time[end > 0])); n <- sapply(tt, function(t) sum(time >= t)); d1 <- sapply(tt, function(t) sum(time == t & end == 1)); d <- sapply(tt, function(t) sum(time == t & end > 0)); S <- cumprod(1 - d / n); before <- c(1, S[-length(S)]); F1 <- cumsum(before * d1 / n)
delta <- sapply(at, function(t) { k <- tt <= t; Ft <- F1[sum(k)]; sqrt(sum((Ft - F1[k])^2 * d[k] / (n[k] * (n[k] - d[k]))) + sum(before[k]^2 * (n[k] - d1[k]) / n[k]^3 * d1[k]) - 2 * sum((Ft - F1[k]) * before[k] * d1[k] / n[k]^2)) })
golden("states-competing-ends", "Two competing ends, chances and their jackknife errors", "R package survival, data set mgus2, ends built as in its vignette on competing risks; survfit with states",
  table = data.frame(stop = time, to = ifelse(end == 0, "", end)), rel = 1e-7, abs = 1e-11,
  expected = list(at = at, none = q$pstate[, 1], progression = q$pstate[, 2], death = q$pstate[, 3], error_progression = q$std.err[, 2], error_death = q$std.err[, 3], delta_error_progression = delta,
    wrong_progression = 1 - summary(survfit(Surv(time, end == 1) ~ 1), times = at)$surv),
  note = "wrong_progression is one minus the Kaplan-Meier curve with deaths taken as censored: too high, for contrast; delta_error is the formula of Dinse and Larson 1986 (from memory)")

d <- data.frame(unit = c(1,1,1,2,2,3,3,3,3,4,5,5,6,6,6,7,8,8,9,9,10,11,11,12),
  start = c(0,10,25,0,15,0,5,12,30,0,0,20,0,10,18,0,0,33,5,21,8,0,12,0), stop = c(10,25,60,15,40,5,12,30,55,50,20,45,10,18,60,22,33,60,21,44,60,12,37,15),
  from = c(1,2,1,1,3,1,2,3,1,1,1,2,1,3,1,1,1,2,1,2,1,1,2,1), to = c(2,1,0,3,4,2,3,1,4,0,2,3,3,1,0,4,2,0,2,4,0,2,1,3))
s <- c("serviceable", "deferred", "in_work", "retired")
f <- survfit(Surv(start, stop, factor(to, 0:4, c("censor", s))) ~ 1, d, id = unit, istate = factor(from, 1:4, s)); at <- c(5,10,12,15,20,25,30,40,55); q <- summary(f, times = at)
m <- f$pstate[match(sort(unique(d$stop[d$to > 0])), f$time), match(s, f$states)]; w <- diff(c(0, sort(unique(d$stop[d$to > 0])), 60))
golden("states-with-recovery", "Serviceable, deferred, in work, retired: moves back and forth, two late entries", "constructed; survfit with states in R",
  table = data.frame(unit = d$unit, start = d$start, stop = d$stop, from = d$from - 1, to = ifelse(d$to == 0, "", d$to - 1)), rel = 1e-9, abs = 1e-12,
  expected = list(time = sort(unique(d$stop[d$to > 0])), at = at, chance = unname(q$pstate[, match(s, f$states)]), error = unname(q$std.err[, match(s, f$states)]), hours_to_60 = colSums(rbind(c(1,0,0,0), m) * w)))

m <- c(.8, 1.5, 3.2, 6); stock <- qpois(.95, m)
golden("stock-levels", "Stock for 95 percent service", "quantiles of the Poisson and negative binomial laws in R", table = data.frame(mean = m), rel = 1e-9, abs = 1e-12,
  expected = list(poisson = stock, covered = ppois(stock, m), negative_binomial_mean_3.2_size_2 = qnbinom(.95, size = 2, mu = 3.2)))

# Failures at one position with renewal: simulation of 400,000 positions gives the law to about 1e-3.
set.seed(20240606); n <- 4e5
renewals <- function(age, hours) { t <- 400 * (rexp(n) + (age / 400)^2.5)^(1 / 2.5) - age; k <- integer(n); while (any(t <= hours)) { i <- t <= hours; k[i] <- k[i] + 1L; t[i] <- t[i] + 400 * rweibull(sum(i), 2.5) }; k }
law <- function(k) as.vector(table(factor(pmin(k, 9), 0:9))) / n
a <- renewals(0, 1000); c <- renewals(600, 200)
golden("renewal-demand", "Law of the number of failures in the hours ahead at one position, Weibull shape 2.5 scale 400 h", "simulated, seed 20240606, 400,000 positions; mean of 2.41 in 1,000 h from new by renewal theory",
  table = data.frame(age = c(0, 600), hours = c(1000, 200)), rel = 0, abs = .004, expected = list(new_1000 = law(a), old_200 = law(c), mean_new_1000 = mean(a), first_old_200 = -expm1(1.5^2.5 - 2^2.5)))
