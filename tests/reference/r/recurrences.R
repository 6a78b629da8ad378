# Mean cumulative functions.  Run in this folder: Rscript recurrences.R
script_name <- "recurrences.R"
source("golden.R")

# events: data.frame(unit, time); windows: data.frame(unit, start, stop). At risk at t when start < t <= stop.
mcf <- function(events, windows) {
  time <- sort(unique(events$time)); units <- unique(windows$unit)
  watched <- t(sapply(units, function(u) { w <- windows[windows$unit == u, ]
    colSums(outer(w$start, time, `<`) & outer(w$stop, time, `>=`)) > 0 }))
  had <- t(sapply(units, function(u) tabulate(match(events$time[events$unit == u], time), length(time)))) * watched
  n <- colSums(watched); d <- colSums(had); step <- d / n
  influence <- t(apply(watched * sweep(sweep(had, 2, step), 2, n, `/`), 1, cumsum))
  # Nelson 1995: variances and covariances of the steps with divisors one less than the units at risk at the later age.
  m <- length(time); C <- matrix(NA_real_, m, m)
  for (l in which(n > 1)) { gap <- watched[, l] * (had[, l] - step[l])
    for (k in seq_len(l)) C[k, l] <- C[l, k] <- if (k == l) sum(gap^2) / (n[l] - 1) / n[l] else sum(gap * had[, k]) / (n[l] - 1) / n[k] }
  list(time = time, at_risk = n, events = d, value = cumsum(step), var_robust = colSums(influence^2), var_poisson = cumsum(d / n^2),
    var_unbiased = sapply(seq_len(m), function(j) sum(C[1:j, 1:j])))
}
long <- function(events, windows) rbind(
  data.frame(unit = windows$unit, what = "window", start = windows$start, stop = windows$stop),
  data.frame(unit = events$unit, what = "event", start = events$time, stop = events$time))
counting <- function(events, windows) do.call(rbind, lapply(seq_len(nrow(windows)), function(i) { w <- windows[i, ]
  e <- sort(events$time[events$unit == w$unit & events$time > w$start & events$time <= w$stop]); k <- duplicated(e)
  cuts <- c(w$start, e, w$stop); s <- c(rep(1, length(e)), 0); keep <- diff(cuts) > 0
  data.frame(unit = w$unit, a = cuts[-length(cuts)][keep], b = cuts[-1][keep], s = s[keep]) }))
at <- function(m, t, what) { i <- findInterval(t, m$time); ifelse(i == 0, 0, m[[what]][pmax(i, 1)]) }
limits <- function(m) { z <- qnorm(.975); s <- sqrt(m$var_robust)
  list(plain_lower = m$value - z * s, plain_upper = m$value + z * s, log_lower = m$value * exp(-z * s / m$value), log_upper = m$value * exp(z * s / m$value)) }

d <- valveSeat
events <- data.frame(unit = d$id[d$status == 1], time = d$time[d$status == 1])
stops <- aggregate(time ~ id, d, max); windows <- data.frame(unit = stops$id, start = 0, stop = stops$time)
m <- mcf(events, windows)
# The usual wrong answer: a survival curve through the counting-process rows, ties parted by a tenth of a day.
tie <- which(diff(d$id) == 0 & diff(d$time) == 0); stop <- d$time; stop[tie] <- stop[tie] - .1
start <- ifelse(duplicated(d$id), c(0, stop[-length(stop)]), 0); km <- survfit(Surv(start, stop, d$status) ~ 1)
golden("valve-seat-mcf", "Mean cumulative number of valve-seat replacements of 41 diesel engines, robust and Poisson variance",
  "Nelson and Doganaksoy 1989; Nelson 1995, Technometrics 37; data set valveSeat of the R package survival",
  table = long(events, windows), rel = 1e-8, abs = 1e-12,
  expected = c(m, limits(m), list(total_events = nrow(events), total_exposure = sum(windows$stop), rate = nrow(events) / sum(windows$stop),
    wrong_minus_log_survival_at_653 = -log(summary(km, times = 653)$surv))),
  published = list(at_risk = list(days = c(61, 581, 586, 604, 653), units = c(41, 38, 34, 22, 9))),
  note = "minus the logarithm of the Kaplan-Meier curve of the counting-process rows (1.579 at 653 days) is not this function (1.543)",
  checks = list("48 events" = nrow(events) == 48))

windows <- data.frame(unit = c(1,1,2,3,3,4,5,6), start = c(0,420,150,0,300,50,0,200), stop = c(250,900,800,180,1000,600,75,950))
events <- data.frame(unit = c(1,1,1,2,2,3,3,4,6,6,6), time = c(120,430,777,300,555,60,640,300,300,640,641))
m <- mcf(events, windows); rows <- counting(events, windows); f <- survfit(Surv(a, b, s) ~ 1, rows, id = unit); q <- match(m$time, f$time)
golden("mcf-window-observation", "Mean cumulative function with late entry and gaps in observation",
  "constructed", table = long(events, windows), expected = m, rel = 1e-8, abs = 1e-12,
  checks = list("survfit(Surv(start, stop, status) ~ 1, id)" = isTRUE(all.equal(f$cumhaz[q], m$value)) && isTRUE(all.equal(f$std.chaz[q], sqrt(m$var_robust), tol = 1e-7))))

id <- c(9100,9100,9102,9102,9102,9102,9103,9103,9103,9103,9106,9106,9108,9108,9110,9110,9117,9117,9117,9117,9117,9124,9124,9125,9125,9126,9126,9128,9128,9128,9134,9134,9136,9136,9138,9138,9156,9156,9156,9176,9176,9176,9176,9176,9182,9182,9190,9190,9197,9197,9199,9199,9200,9200,9201,9201,9201,9201,9203,9203,9207,9207,9209,9209,9212,9212,9213,9213,9216,9216,9226,9226,9235,9235,9236,9236,9236,9238,9238,9239,9239,9239,9239)
t2 <- c(462,730,364,391,548,724,302,444,500,730,250,730,500,724,88,724,272,421,552,625,719,481,710,431,710,367,710,635,650,708,402,700,33,687,287,687,317,498,657,203,211,277,373,511,293,503,173,470,242,464,39,464,91,462,119,148,306,461,382,460,250,434,192,448,369,448,22,447,54,441,194,432,61,419,19,185,419,187,416,93,205,264,415)
status <- c(1,0,1,1,1,0,1,1,1,0,1,0,1,0,1,0,1,1,1,1,0,1,0,1,0,1,0,1,1,0,1,0,1,0,1,0,1,1,0,1,1,1,1,0,1,0,1,0,1,0,1,0,1,0,1,1,1,0,1,0,1,0,1,0,1,0,1,0,1,0,1,0,1,0,1,1,0,1,0,1,1,1,0)
d <- data.frame(id, t2, status, batch = ifelse(id <= 9156, 1, 2))
one <- function(k) { x <- d[d$batch == k, ]; s <- aggregate(t2 ~ id, x, max)
  mcf(data.frame(unit = x$id[x$status == 1], time = x$t2[x$status == 1]), data.frame(unit = s$id, start = 0, stop = s$t2)) }
m1 <- one(1); m2 <- one(2); when <- c(100, 200, 300, 400, 415); s <- aggregate(t2 ~ id, d, max)
d$t1 <- with(d, ave(t2, id, FUN = function(v) c(0, v[-length(v)])))
f <- survfit(Surv(t1, t2, status) ~ batch, d, id = id)
two_sample <- function(rows) { f <- coxph(Surv(a, b, s) ~ x, rows, cluster = unit, ties = "breslow", control = coxph.control(eps = 1e-13, toler.chol = 1e-15)); cx <- summary(f)
  list(robust_score_chi_square = unname(cx$robscore["test"]), naive_score_chi_square = unname(cx$sctest["test"]), log_ratio = unname(coef(f)), model_se = sqrt(f$naive.var[1, 1]), robust_se = sqrt(f$var[1, 1])) }
robust <- two_sample(data.frame(unit = d$id, a = d$t1, b = d$t2, s = d$status, x = (d$batch == 2) * 1))
golden("braking-grids-two-batches", "Mean cumulative functions of two batches and their difference with robust standard error",
  "Doganaksoy and Nelson 1998; data set braking of the R package survival", rel = 1e-7, abs = 1e-10,
  table = long(data.frame(unit = id[status == 1], time = t2[status == 1]), data.frame(unit = s$id, start = 0, stop = s$t2)),
  parameters = list(last_unit_of_first_batch = 9156),
  expected = c(robust, list(first = m1, second = m2, at = when, difference = at(m2, when, "value") - at(m1, when, "value"),
    difference_se = sqrt(at(m1, when, "var_robust") + at(m2, when, "var_robust")))),
  checks = list("survfit by batch" = isTRUE(all.equal(f[1]$cumhaz[match(m1$time, f[1]$time)], m1$value)) &&
    isTRUE(all.equal(f[2]$std.chaz[match(m2$time, f[2]$time)], sqrt(m2$var_robust), tol = 1e-7))))

suppressWarnings(RNGkind("Mersenne-Twister", "Inversion", "Rejection"))
# Sixty aircraft, twelve welds, gamma frailty of shape 3; aircraft 17 has four times the rate.
set.seed(20240602); base <- c(3.2,.4,1.1,.9,2.5,.3,.7,1.8,.2,.6,1.4,.5) / 1000
fr <- rgamma(60, 3, 3); fr[17] <- 4
start <- round(ifelse(runif(60) < .4, runif(60, 100, 900), 0), 1); stop <- round(start + runif(60, 500, 2200), 1); e <- list()
for (a in 1:60) for (l in 1:12) { n <- rpois(1, base[l] * fr[a] * (stop[a] - start[a])); if (n) e[[length(e) + 1]] <-
  data.frame(unit = a, location = l, time = pmin(stop[a], pmax(round(start[a] + .1, 1), round(sort(runif(n, start[a], stop[a])), 1)))) }
e <- do.call(rbind, e); windows <- data.frame(unit = 1:60, start, stop); when <- c(250, 500, 1000, 1500, 2000, 2500)
three <- function(x) { m <- mcf(x, windows); list(at_risk = at(m, when, "at_risk"), value = at(m, when, "value"), var_robust = at(m, when, "var_robust"), var_poisson = at(m, when, "var_poisson")) }
n <- nrow(e); lt <- function(x) ifelse(x > 0, log(x), 0)
score <- function(b) { A <- sum(stop^b - start^b); n / b + sum(log(e$time)) - n * sum(stop^b * lt(stop) - start^b * lt(start)) / A }
b <- uniroot(score, c(.2, 4), tol = 1e-14)$root; l <- n / sum(stop^b - start^b)
# Information of the profile: n / b^2 plus n times the variance of log age under the fitted rate, signs of the window ends included.
A <- sum(stop^b - start^b); A1 <- sum(stop^b * lt(stop) - start^b * lt(start)); A2 <- sum(stop^b * lt(stop)^2 - start^b * lt(start)^2); se <- 1 / sqrt(n / b^2 + n * (A2 / A - (A1 / A)^2))
ll <- function(b, l) n * log(l) + n * log(b) + (b - 1) * sum(log(e$time)) - l * sum(stop^b - start^b)
golden("sim2-cracks", "Cracks on 60 aircraft at 12 welds with late entry: mean cumulative functions and pooled power law",
  "simulated, seed 20240602: gamma frailty of shape 3, constant rates, aircraft 17 at four times the rate",
  table = rbind(data.frame(unit = 1:60, location = "", what = "window", start, stop),
                data.frame(unit = e$unit, location = e$location, what = "event", start = e$time, stop = e$time)),
  expected = list(at = when, all = three(e), location_1 = three(e[e$location == 1, ]), location_5 = three(e[e$location == 5, ]), location_9 = three(e[e$location == 9, ]),
    power_law = list(exponent = b, lambda = l, log_likelihood = ll(b, l), log_likelihood_constant = ll(1, n / sum(stop - start)), likelihood_ratio = 2 * (ll(b, l) - ll(1, n / sum(stop - start))), exponent_se = se)), rel = 1e-7, abs = 1e-11)
