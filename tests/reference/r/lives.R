# Lives: parametric fits and the non-parametric estimate.  Run in this folder: Rscript lives.R
script_name <- "lives.R"
source("golden.R"); source("life_functions.R")
library(KMsurv)
case <- function(id, method, source, d, expected, ..., rel = 1e-6, abs = 1e-8, digits = 9)
  golden(id, method, source, expected = nine(expected, digits), table = if (is.null(d)) NULL else as_table(d), ..., rel = rel, abs = abs)
near <- function(a, b, tol) isTRUE(all.equal(unname(a), unname(b), tolerance = tol))

failures <- c(54, 187, 216, 240, 244, 335, 361, 373, 375, 386)
d <- lives(c(failures, rep(500, 10)), c(failures, rep(Inf, 10)))
w <- weibull_fit(d, p = c(.01, .1, .5), t = c(100, 250, 500), conditional = c(200, 100))
s <- survreg(Surv(lower, is.finite(upper) * 1) ~ 1, d, control = list(rel.tolerance = 1e-13))
case("nist-8.4.1.3-weibull-54", "Weibull maximum likelihood, 20 units, test stopped at 500 h",
  "NIST/SEMATECH e-Handbook 8.4.1.3 on the data of 8.2.2.1; published shape 1.7207 and scale 606.5280", d,
  c(w, mean_life = w$scale * gamma(1 + 1 / w$shape)), published = list(shape = 1.7207, scale = 606.528),
  note = "the handbook's own script types the first failure as 55; see nist-8.4.1.3-weibull-55. The published shape is cut, not rounded.",
  checks = list("survreg" = near(c(w$shape, w$scale), c(1 / s$scale, exp(coef(s))), 1e-9), "the published pair" = abs(w$shape - 1.7207) < 2e-4 && abs(w$scale - 606.528) < 1e-3))

failures[1] <- 55
d <- lives(c(failures, rep(500, 10)), c(failures, rep(Inf, 10)))
w <- weibull_fit(d); y <- Surv(d$lower, is.finite(d$upper) * 1)
l <- survreg(y ~ 1, dist = "lognormal", control = list(rel.tolerance = 1e-12)); g <- survreg(y ~ 1, dist = "loglogistic", control = list(rel.tolerance = 1e-12))
case("nist-8.4.1.3-weibull-55", "Weibull, lognormal and loglogistic maximum likelihood, 20 units, test stopped at 500 h",
  "NIST/SEMATECH e-Handbook 8.4.1.3, the handbook's R script: scale 606.005, shape 1.72563, log-likelihood -75.122, AIC 154.24, mean 540.175, sd 322.647, lognormal AIC 154.33", d,
  c(w, mean_life = w$scale * gamma(1 + 1 / w$shape), sd_life = w$scale * sqrt(gamma(1 + 2 / w$shape) - gamma(1 + 1 / w$shape)^2),
    lognormal_mu = unname(coef(l)), lognormal_sigma = l$scale, lognormal_aic = 4 - 2 * l$loglik[1], lognormal_se_mu = sqrt(l$var[1, 1]), lognormal_se_sigma = l$scale * sqrt(l$var[2, 2]),
    loglogistic_scale = exp(unname(coef(g))), loglogistic_shape = 1 / g$scale, loglogistic_loglik = g$loglik[1], list(km = c(points(survfit(y ~ 1)), list(log = limits(y, "log"))))),
  published = list(shape = 1.72563, scale = 606.005, loglik = -75.122, aic = 154.24, mean_life = 540.175, sd_life = 322.647, lognormal_aic = 154.33),
  checks = list("the published digits" = round(w$scale, 3) == 606.005 && round(w$shape, 5) == 1.72563 && round(4 - 2 * l$loglik[1], 2) == 154.33))

f <- c(22500, 37500, 46000, 48500, 51500, 53000, 54500, 57500, 66500, 68000, 69500, 76500, 77000, 78500, 80000, 81500, 82000, 83000, 84000, 91500, 93500, 102500, 107000, 108500, 112500, 113500, 116000, 117000, 118500, 119000, 120000, 122500, 123000, 127500, 131000, 132500, 134000)
d <- lives(c(f, 135000), c(f, Inf), count = c(rep(1, 37), 59))
w <- weibull_fit(d, t = 80000); l <- survreg(Surv(lower, is.finite(upper) * 1) ~ 1, d, weights = count, dist = "lognormal", control = list(rel.tolerance = 1e-13))
case("hahn-shapiro-locomotive", "Weibull, lognormal and exponential, 37 failures and 59 censored at 135000 miles",
  "Hahn and Shapiro 1967, sample data of NIST Dataplot (HAHN.DAT); fits computed", d,
  c(w, lognormal_mu = unname(coef(l)), lognormal_sigma = l$scale, lognormal_loglik = l$loglik[1], exponential_mean = sum(d$lower * d$count) / 37, exponential_loglik = -37 * log(sum(d$lower * d$count) / 37) - 37))

# Each wheel looked at once.
cracked <- c(0, 4, 2, 7, 5, 9, 9, 6, 22, 21, 21); whole <- c(39, 49, 31, 66, 25, 30, 33, 7, 12, 19, 15); h <- c(4, 10, 14, 18, 22, 26, 30, 34, 38, 42, 46)
d <- lives(c(rep(0, 11), h), c(h, rep(Inf, 11)), count = c(cracked, whole)); d <- d[d$count > 0, ]
w <- weibull_fit(d, t = c(10, 30)); iso <- isoreg(rep(h, cracked + whole), unlist(mapply(function(a, b) c(rep(0, a), rep(1, b)), whole, cracked)))$yf[cumsum(cracked + whole)]
l <- survreg(Surv(ifelse(lower == 0, NA, lower), ifelse(is.infinite(upper), NA, upper), type = "interval2") ~ 1, d, weights = count, dist = "lognormal", control = list(rel.tolerance = 1e-13))
e <- optimize(function(x) sum(d$count * log(pexp(d$upper, exp(x)) - pexp(d$lower, exp(x)))), c(-12, 2), maximum = TRUE, tol = 1e-12)
wrong <- weibull_fit(transform(d, lower = ifelse(is.finite(upper), upper, lower)), profile = FALSE)
case("turbine-wheels", "Current-status data: every wheel looked at once; Weibull, lognormal, exponential, and isotonic regression as the non-parametric estimate",
  "Nelson 1982 p. 409, Meeker and Escobar 1998 p. 135 (432 wheels, 106 cracked; hours in hundreds); lognormal mu 3.6999, sigma 0.7199, log-likelihood -190.73 printed in the survival package's saved test output", d,
  c(w, lognormal_mu = unname(coef(l)), lognormal_sigma = l$scale, lognormal_loglik = l$loglik[1], lognormal_se_mu = sqrt(l$var[1, 1]), exponential_scale = exp(-e$maximum), exponential_rate = exp(e$maximum), exponential_loglik = e$objective, lr_exponential = 2 * (w$loglik - e$objective),
    list(look = I(h), cdf = I(iso), nonparametric_loglik = sum(ifelse(cracked > 0, cracked * log(iso), 0) + whole * log(1 - iso)), wrong_shape = wrong$shape, wrong_scale = wrong$scale)),
  published = list(lognormal_mu = 3.6999, lognormal_sigma = .7199, lognormal_loglik = -190.73, shape = 2.1758, scale = 46.777, loglik = -189.287, median = 39.53, exponential_loglik = -201.124, cdf = c(0, .0698, .0698, .0959, .1667, .2222, .2222, .4615, .5811, .5811, .5833), found_shape = 4.79, found_scale = 44.29),
  note = "printed in the source: the lognormal; the other digits beside it are recomputed and rounded",
  checks = list("the published lognormal" = abs(coef(l) - 3.6999) < 1e-4 && abs(l$scale - .7199) < 1e-4, "survreg" = near(survreg(Surv(ifelse(lower == 0, NA, lower), ifelse(is.infinite(upper), NA, upper), type = "interval2") ~ 1, d, weights = count)$loglik[1], w$loglik, 1e-8)))

# Repeated looks at 167 parts.
months <- c(6.12, 19.92, 29.64, 35.40, 39.72, 45.24, 52.32, 63.48); days <- cracks$days; n <- c(cracks$fail, 167 - sum(cracks$fail)); F <- cumsum(cracks$fail) / 167
d <- lives(c(0, months), c(months, Inf), count = n); inDays <- lives(c(0, days), c(days, Inf), count = n)
w <- weibull_fit(d); wd <- weibull_fit(inDays, p = c(.01, .1, .5)); expect <- 167 * diff(c(0, 1 - exp(-(days / wd$scale)^wd$shape), 1))
wrong <- weibull_fit(transform(d, lower = ifelse(is.finite(upper), upper, lower)), profile = FALSE)
case("crack-inspections", "Repeated looks at 167 parts, 8 looks; Weibull and non-parametric",
  "Nelson 1982 p. 415; printed in the survival package's saved test output, in days: mu 7.6880, log scale -0.3953, log-likelihood -309.6; in months shape 1.485, scale 71.69 (from memory)", d,
  c(w, list(days = I(days), in_days = wd, cdf = I(F), cdf_se = I(sqrt(F * (1 - F) / 167)), pearson = sum((n - expect)^2 / expect), deviance = 2 * sum(n * log(n / expect)), wrong_shape = wrong$shape, wrong_scale = wrong$scale)),
  published = list(mu_days = 7.6880, log_sigma = -.3953, se_mu_days = .0744, se_log_sigma = .0987, loglik = -309.6, b10_days = 479.3, median_days = 1704.7, shape = 1.485, scale_months = 71.69, cdf = c(.0299, .1257, .1976, .3054, .4132, .4251, .4611, .5629), found_shape = 1.888, found_scale = 70.09),
  checks = list("the published fit in days" = abs(log(wd$scale) - 7.6880) < 1e-4 && abs(-log(wd$shape) + .3953) < 1e-4, "months" = abs(w$scale - 71.69) < .02))

d <- lives(genfan$hours, ifelse(genfan$status == 1, genfan$hours, Inf)); tt <- sum(genfan$hours); w <- weibull_fit(d, p = c(.01, .05, .1, .5), t = c(1000, 5000, 8000)); y <- Surv(genfan$hours, genfan$status)
case("generator-fans", "Weibull and exponential, 12 failures of 70 fans, multiple right censoring",
  "Nelson 1982 p. 318; R package survival, data genfan; facts: shape 1.0584, scale 26297 h, 344440 h, exponential mean 28703 h", d,
  c(w, exponential_mean = tt / 12, exponential_loglik = -12 * log(tt / 12) - 12, lr_exponential = 2 * (w$loglik + 12 * log(tt / 12) + 12),
    list(total_time = tt, km = c(points(survfit(y ~ 1)), list(log = limits(y, "log"))), exponential_mean_interval_time = I(2 * tt / qchisq(c(.975, .025), c(26, 24))), exponential_mean_interval_failures = I(2 * tt / qchisq(c(.975, .025), 24)), weibayes_2_scale = (sum(genfan$hours^2) / 12)^.5,
         weibayes_2_interval = I((2 * sum(genfan$hours^2) / qchisq(c(.975, .025), 24))^.5))),
  published = list(shape = 1.0584, scale = 26297, total_time = 344440, exponential_mean = 28703), checks = list("survreg" = near(exp(coef(survreg(Surv(hours, status) ~ 1, genfan, control = list(rel.tolerance = 1e-13)))), w$scale, 1e-8)))

d <- lives(c(0, 1, 2, 3, 0, 1, 2, 0, 1), c(1, 2, 3, Inf, 1, 2, Inf, 1, Inf), count = c(1, 2, 2, 95, 2, 3, 95, 1, 99)); f <- npmle(d$lower, d$upper, d$count); p <- c(4/300, 5/197, 2/97); S <- cumprod(1 - p); d$plant <- c(1, 1, 1, 1, 2, 2, 2, 3, 3)
case("heat-exchanger", "Three plants with different numbers of looks; non-parametric and Weibull",
  "Heat-exchanger tube cracks, Meeker and Escobar 1998 chapter 3: pooled hazards 4/300, 5/197, 2/97", d,
  c(weibull_fit(d, p = .1), list(cdf = I(1 - S), cdf_se = I(S * sqrt(cumsum(p / ((1 - p) * c(300, 197, 97))))), plant_1_cdf = I(c(1, 3, 5) / 100), nonparametric_loglik = f$loglik)), rel = 1e-8, abs = 1e-11, digits = 11, checks = list("products by hand" = near(cumsum(f$mass)[1:3], 1 - cumprod(1 - p), 1e-8)))

h <- c(12,20,30,32,50,64,85,150,153,212,250,250,400,550,550,650,650,708,750,750,808,828,850,850,872,884,950,950,1013,1050,1050,1082,1105,1150,1150,1198,1249,1250,1250,1251,1350,1350,1405,1428,1450,1450,1550,1550,1568,1650,1650,1750,1750,1850,1850,1950,1950,2050,2050,2150)
failed <- c(0,0,0,1,0,1,0,0,1,1,0,0,0,0,0,0,0,1,0,0,1,1,0,0,1,1,0,0,1,0,0,1,1,0,0,1,1,0,0,1,0,0,1,1,0,0,0,0,1,0,0,0,0,0,0,0,0,0,0,0)
n <- c(39,52,46,1,31,1,48,102,1,1,158,2,312,101,2,101,2,1,100,9,1,1,100,23,1,2,56,27,1,55,20,1,1,56,22,1,1,55,22,1,56,11,1,1,53,11,55,20,1,55,8,55,4,55,2,152,3,152,3,1)
baseD <- c(0,0,0,0,0,0,0,0,0,0,0,1,0,0,1,0,1,1,0,1,0,1,0,1,0,1,0,1,1,0,1,1,1,0,1,1,1,0,1,1,0,1,0,0,0,1,0,1,0,0,1,0,1,0,1,0,1,0,1,1)
d <- lives(h, ifelse(failed == 1, h, Inf), count = n); wd <- weibull_fit(d[baseD == 1, ], p = .1); wo <- weibull_fit(d[baseD == 0, ], p = .1); w <- weibull_fit(d, p = .1)
golden("bleed-system", "Weibull with large counts of censored units, two bases, and the stated-shape limit with no failures",
  "Aircraft engine bleed system, USAF Weibull Analysis Handbook AFWAL-TR-83-2079 (data of Meeker and Escobar 1998 chapter 6)", table = cbind(as_table(d), base_d = baseD),
  expected = nine(c(w, list(failures = sum(failed * n), units = sum(n), base_d = wd, other = wo, lr_two_bases = 2 * (wd$loglik + wo$loglik - w$loglik),
    weibayes_2_no_failure_scale_lower_95 = (2 * sum((n * h^2)[baseD == 0]) / qchisq(.95, 2))^.5))), rel = 1e-6, abs = 1e-8, checks = list("19 failures" = sum(failed * n) == 19))

# Term by term at given parameters, the narrow intervals included.
d <- lives(c(500, 500, 0, 400, 500, 500, 350, 400, 899.999999, 1e-3, 3000), c(500, Inf, 500, 500, 500, Inf, 500, 500, 900, 2e-3, Inf), entry = c(0, 0, 0, 0, 300, 300, 300, 300, 300, 0, 2900)); th <- c(log(900), log(2.2))
S <- function(t) pweibull(t, 2.2, 900, lower.tail = FALSE)
golden("weibull-terms", "Log-likelihood term by term at shape 2.2, scale 900: exact, right, left, interval, each with and without entry age",
  "definition: ln f(t), ln S(lower), ln(S(lower) - S(upper)), each less ln S(entry)", table = as_table(d),
  note = "the interval (899.999999, 900] is -20.7402544560312685 with sixty decimal digits at the doubles given; subtracting cumulative hazards in double precision gives -20.74025437, wrong from the ninth digit on",
  expected = list(loglik = I(sapply(1:nrow(d), function(i) Re(weibull_loglik(th, d[i, ])))), score_logscale = I(sapply(1:nrow(d), function(i) weibull_score(th, d[i, ])[1])), score_logshape = I(sapply(1:nrow(d), function(i) weibull_score(th, d[i, ])[2]))),
  parameters = list(shape = 2.2, scale = 900), rel = 1e-9, abs = 1e-12,
  checks = list("dweibull" = near(Re(weibull_loglik(th, d[1, ])), dweibull(500, 2.2, 900, log = TRUE), 1e-12), "pweibull" = near(Re(weibull_loglik(th, d[8, ])), log((S(400) - S(500)) / S(300)), 1e-12)))

data(channing); m <- subset(channing, age > ageentry & gender == 1)
d <- lives(m$age, ifelse(m$death == 1, m$age, Inf), m$ageentry); start <- c(log(1050), log(9)); w <- weibull_fit(d, start = start)
naive <- weibull_fit(transform(d, entry = 0), profile = FALSE, start = start)
case("channing-men", "Weibull with left truncation and right censoring",
  "R package KMsurv, data channing: men, age and entry age in months (Klein and Moeschberger 1997)", d, c(w, untruncated_shape = naive$shape, untruncated_scale = naive$scale), rel = 1e-6,
  checks = list("direct search" = { o <- optim(c(1050, 9), function(p) -sum(m$death * (log(p[2]) - p[2] * log(p[1]) + (p[2] - 1) * log(m$age)) - (m$age / p[1])^p[2] + (m$ageentry / p[1])^p[2]), control = list(reltol = 1e-15, maxit = 5000, parscale = c(1000, 10))); max(abs(c(w$scale, w$shape) / o$par - 1)) < 1e-4 }))

d <- lives(c(312, 498, 611, 705, 702, 905, 820, 1001, 640, 0, 420, 733, 1104, 590, 880, 655), c(405, 601, 707, 820, Inf, 1012, Inf, 1098, 640, 203, 512, Inf, Inf, 698, 985, 655), c(0, 0, 250, 310, 505, 0, 620, 0, 180, 0, 100, 401, 777, 0, 850, 0))
w <- weibull_fit(d, t = c(500, 900), conditional = c(600, 100)); naive <- weibull_fit(transform(d, entry = 0), profile = FALSE)
l <- lognormal_fit(d, c(6.6, -.8)); g <- loglogistic_fit(d, c(6.6, -1.3))
case("sixteen-lives", "Every kind of life together: exact, right, left, interval, late entry; Weibull, lognormal, loglogistic",
  "constructed; Nelder-Mead on sums of R's own distribution functions for the lognormal and loglogistic", d,
  c(w, untruncated_shape = naive$shape, untruncated_scale = naive$scale, lognormal_mu = l$par[1], lognormal_sigma = exp(l$par[2]), lognormal_loglik = l$loglik, loglogistic_scale = exp(g$par[1]), loglogistic_shape = exp(-g$par[2]), loglogistic_loglik = g$loglik), rel = 1e-6)

b <- 2.2; e <- 900; t <- c(0, 100, 450, 900, 1500, 2700)
left <- function(S) sapply(t, function(x) integrate(function(u) S(x + u) / S(x), 0, Inf, rel.tol = 1e-11)$value)
golden("life-functions", "Mean, standard deviation, quantiles, hazard, conditional failure and mean further life of each family",
  "closed forms where they exist, else numeric integration of the survival function (R integrate)", parameters = list(shape = b, scale = e, age = I(t), ahead = 100),
  expected = nine(list(weibull = list(mean = e * gamma(1 + 1 / b), sd = e * sqrt(gamma(1 + 2 / b) - gamma(1 + 1 / b)^2), quantile_p = I(c(.01, .1, .5, .99)), quantile = I(qweibull(c(.01, .1, .5, .99), b, e)), cdf = I(pweibull(t, b, e)),
      hazard = I(b / e * (t / e)^(b - 1)), conditional_failure = I(-expm1((t / e)^b - ((t + 100) / e)^b)), mean_further_life = I(left(function(x) pweibull(x, b, e, lower.tail = FALSE)))),
    lognormal = list(mean = e * exp(1 / b^2 / 2), sd = e * exp(1 / b^2 / 2) * sqrt(expm1(1 / b^2)), quantile = I(qlnorm(c(.01, .1, .5, .99), log(e), 1 / b)), cdf = I(plnorm(t, log(e), 1 / b)), hazard = I(ifelse(t == 0, 0, dlnorm(t, log(e), 1 / b) / plnorm(t, log(e), 1 / b, lower.tail = FALSE))), mean_further_life = I(left(function(x) plnorm(x, log(e), 1 / b, lower.tail = FALSE)))),
    loglogistic = list(mean = e * (pi / b) / sin(pi / b), quantile = I(e * (c(.01, .1, .5, .99) / (1 - c(.01, .1, .5, .99)))^(1 / b)), cdf = I(plogis(b * log(t / e))), mean_further_life = I(left(function(x) plogis(b * log(x / e), lower.tail = FALSE)))))), rel = 1e-7, abs = 1e-12)

further <- function(x) e / b * gamma(1 / b) * pgamma((x / e)^b, 1 / b, lower.tail = FALSE) * exp((x / e)^b)
golden("weibull-functions", "Mean, standard deviation, mode, quantiles, cdf, hazard, cumulative hazard, conditional failure and mean further life of the Weibull law",
  "closed forms; mean further life by R's incomplete gamma function", parameters = list(shape = b, scale = e, age = I(t), ahead = 100), rel = 1e-9, abs = 1e-12,
  expected = list(mean = e * gamma(1 + 1 / b), sd = e * sqrt(gamma(1 + 2 / b) - gamma(1 + 1 / b)^2), mode = e * ((b - 1) / b)^(1 / b), quantile_p = I(c(.01, .1, .5, .99)), quantile = I(qweibull(c(.01, .1, .5, .99), b, e)),
    cdf = I(pweibull(t, b, e)), hazard = I(b / e * (t / e)^(b - 1)), cumulative_hazard = I((t / e)^b), conditional_failure = I(-expm1((t / e)^b - ((t + 100) / e)^b)), mean_further_life = I(further(t))),
  checks = list("integrate" = max(abs(further(t) / left(function(x) pweibull(x, b, e, lower.tail = FALSE)) - 1)) < 1e-8, "optimize for the mode" = near(optimize(function(x) dweibull(x, b, e), c(1, 2000), maximum = TRUE, tol = 1e-10)$maximum, e * ((b - 1) / b)^(1 / b), 1e-6)))

time <- rep(1:4, each = 3); status <- rep(c(1, 0, 2), 4); n <- c(12, 3, 2, 6, 2, 4, 2, 0, 2, 3, 3, 5)
d <- lives(ifelse(status == 2, 0, time), ifelse(status == 0, Inf, time), count = n)[n > 0, ]; f <- npmle(d$lower, d$upper, d$count)
case("turnbull-1974", "Non-parametric estimate, exact with right- and left-censored counts",
  "Turnbull 1974, JASA 69, 169-173: S = .538, .295, .210, .095 at 1 to 4", d, c(masses(f), list(age = I(1:4), survival = I(sapply(1:4, function(t) 1 - sum(f$mass[f$upper <= t]))))), published = list(survival = c(.538, .295, .210, .095)), rel = 1e-5, abs = 1e-6,
  checks = list("the published survival" = all(abs(sapply(1:4, function(t) 1 - sum(f$mass[f$upper <= t])) - c(.538, .295, .210, .095)) < 6e-4)))

t1 <- c(rep(0, 100), rep(1, 200), 100, 200, 210, 220, rep(365, 100), rep(366, 5), 731:741)
t2 <- c((1:100) * 3, 10 + 1:100, rep(365:366, c(60, 40)), NA, 500, NA, 450, rep(730, 90), rep(NA, 10), c(528, 571, 691, 730, 731), NA, 1095:1099, NA, 1400, 1200, 772, 1461)
d <- lives(t1, t2); f <- npmle(t1, t2, iter = 5000)
case("zinsmeister", "Non-parametric estimate, slow to converge: no mass on most candidate intervals",
  "test of the survival package (turnbull): masses .6958, .1674, .1079, .0289", d, masses(f), published = list(mass = c(.6958, .1674, .1079, .0289)), rel = 1e-6, abs = 1e-7, checks = list("the published masses" = all(abs(f$mass - c(.6958, .1674, .1079, .0289)) < 6e-5), "stationarity" = f$largest_derivative < 1 + 1e-7))

L <- c(45,25,37,6,46,0,0,26,18,46,46,24,46,27,36,7,36,5,17,46,19,7,36,17,37,37,24,0,40,32,4,17,33,15,46,19,11,11,37,22,38,34,46,5,36,46)
R <- c(Inf,37,Inf,10,Inf,5,7,40,Inf,Inf,Inf,Inf,Inf,34,Inf,16,44,11,Inf,Inf,35,14,48,25,44,Inf,Inf,8,Inf,Inf,11,25,Inf,Inf,Inf,26,15,18,Inf,Inf,Inf,Inf,Inf,12,Inf,Inf)
d <- lives(L, R); f <- npmle(L, R)
case("breast-cosmesis", "Non-parametric estimate and Weibull, general interval censoring, radiotherapy arm of 46",
  "Finkelstein and Wolfe 1985; published masses .0463 .0334 .0887 .0708 .0926 .0818 .1209 .4656 (from memory)", d, c(masses(f), f[c("candidate_lower", "candidate_upper")], list(weibull = weibull_fit(d, p = c(.1, .25, .5)))),
  published = list(lower = c(4, 6, 7, 11, 24, 33, 38, 46), upper = c(5, 7, 8, 12, 25, 34, 40, 48), mass = c(.0463, .0334, .0887, .0708, .0926, .0818, .1209, .4656)),
  checks = list("the published masses" = all(abs(f$mass - c(.0463, .0334, .0887, .0708, .0926, .0818, .1209, .4656)) < 6e-5)))

data(bcdeter); x <- bcdeter; x$upper[is.na(x$upper)] <- Inf; d <- lives(x$lower, x$upper); two <- x$treat == 2
w0 <- weibull_fit(d, profile = FALSE); w1 <- weibull_fit(d[!two, ], profile = FALSE); w2 <- weibull_fit(d[two, ], profile = FALSE)
f1 <- npmle(d$lower[!two], d$upper[!two]); f2 <- npmle(d$lower[two], d$upper[two])
golden("breast-cosmesis-two-arms", "Non-parametric estimate and Weibull per arm, both arms free against one law",
  "R package KMsurv, data bcdeter (95 rows, one more than the published set; zero lower ends are left-censored)", table = cbind(as_table(d), arm = x$treat),
  expected = nine(list(arm_1 = c(masses(f1), list(weibull = w1)), arm_2 = c(masses(f2), list(weibull = w2)), pooled = w0, common_shape = common_shape(x$lower, x$upper, two), lr_both_free = 2 * (w1$loglik + w2$loglik - w0$loglik))), rel = 1e-6, abs = 1e-7)

g <- read.csv("../sim1-gaskets/data.csv"); d <- lives(g$lower, g$upper, g$entry); w <- weibull_fit(d, p = c(.01, .1, .5, .9), t = c(200, 400, 600, 800, 1000), conditional = c(500, 100))
naive <- weibull_fit(transform(d, entry = 0), profile = FALSE); found <- weibull_fit(transform(d, lower = ifelse(is.finite(upper), upper, lower)), profile = FALSE)
new <- d$entry == 0; l <- lognormal_fit(d, c(6.6, -.6)); f <- npmle(d$lower[new], d$upper[new], iter = 3000); at <- c(100, 200, 300, 400, 500, 600, 700, 800, 900, 1000, 1200)
by <- sapply(1:4, function(c) unlist(weibull_fit(d[g$cylinder == c, ], p = NULL, profile = FALSE)[c("shape", "scale", "loglik", "se_shape", "se_scale")]))
middle <- ifelse(is.finite(d$upper), (d$lower + d$upper) / 2, d$lower); half <- weibull_fit(transform(d, lower = middle, upper = ifelse(is.finite(upper), middle, Inf)), p = NULL, profile = FALSE)
ex <- optimize(function(l) sum(log(pexp(d$upper - d$entry, exp(l)) - pexp(d$lower - d$entry, exp(l)))), c(-9, -4), maximum = TRUE, tol = 1e-12)
golden("sim1-gaskets", "Gaskets found failed at looks only, half of them first seen with age: Weibull and lognormal; non-parametric estimate of those followed from new",
  "simulated with seed 20240601, truth Weibull shape 2.2, scale 900 h", table = cbind(as_table(d), cylinder = g$cylinder, reason = g$reason),
  expected = nine(c(w, list(lives = nrow(d), failed = sum(g$reason == "failed"), removed = sum(g$reason == "other"), still_good = sum(g$reason == "end"), late_entries = sum(!new),
    from_new = list(weibull = weibull_fit(d[new, ], profile = FALSE), nonparametric = masses(f), lives = sum(new), candidates = length(f$candidate_lower), support = length(f$mass)),
    untruncated_shape = naive$shape, untruncated_scale = naive$scale, untruncated_loglik = naive$loglik, middle_shape = half$shape, middle_scale = half$scale, middle_loglik = half$loglik,
    found_shape = found$shape, found_scale = found$scale, found_loglik = found$loglik, cylinder_shape = I(by[1, ]), cylinder_scale = I(by[2, ]), cylinder_loglik = I(by[3, ]), cylinder_se_shape = I(by[4, ]), cylinder_se_scale = I(by[5, ]),
    exponential_rate = exp(ex$maximum), exponential_loglik = ex$objective, lr_shape_one = 2 * (w$loglik - ex$objective), lognormal_mu = l$par[1], lognormal_sigma = exp(l$par[2]), lognormal_loglik = l$loglik,
    lr_cylinders = 2 * (sum(by[3, ]) - w$loglik), from_new_loglik = f$loglik, cdf_age = I(at), cdf_least = bounds(f, at)$least, cdf_greatest = bounds(f, at)$greatest))), rel = 1e-6, abs = 1e-7)

x <- read.csv("../sim3-repairs/data.csv"); d <- lives(x$lower, x$upper); welded <- x$method == "weld_repaired"
wa <- weibull_fit(d[!welded, ]); wb <- weibull_fit(d[welded, ]); w0 <- weibull_fit(d, profile = FALSE)
fa <- npmle(d$lower[!welded], d$upper[!welded]); fb <- npmle(d$lower[welded], d$upper[welded]); middle <- ifelse(is.na(x$upper), x$lower, (x$lower + x$upper) / 2)
golden("sim3-repairs", "Time to recurrence after stop-drilling and after weld repair, interval-censored: one law each, common shape, one law",
  "simulated with seed 20240603; survreg of the survival package for the common shape", table = cbind(as_table(d), method = x$method),
  expected = nine(list(stop_drilled = wa, weld_repaired = wb, pooled_loglik = w0$loglik, lr_both_free = 2 * (wa$loglik + wb$loglik - w0$loglik), common_shape = common_shape(x$lower, x$upper, welded), middle_log_rank = survdiff(Surv(middle, !is.na(x$upper)) ~ welded)$chisq,
    stop_drilled_npmle_loglik = fa$loglik, weld_repaired_npmle_loglik = fb$loglik, cdf_age = I(c(300, 600)), stop_drilled_cdf = bounds(fa, c(300, 600)), weld_repaired_cdf = bounds(fb, c(300, 600)))), rel = 1e-6, abs = 1e-7)

# Rows drawn by a random search for differences from R, seed 20261125: every life entered late, so that survival like a power of age is
# a rival of the loglogistic law.
g <- read.csv("../late-entries-loglogistic/data.csv"); d <- lives(g$lower, g$upper, ifelse(is.na(g$entry), 0, g$entry)); f <- loglogistic_fit(d, c(4.7, -2.7))
S <- function(t) plogis(exp(-f$par[2]) * (log(t) - f$par[1]), lower.tail = FALSE, log.p = TRUE)
# The rival: survival (entry / t)^b, the limit of the law as its scale goes to nothing.
power <- optimize(function(b) { x <- -b * (log(d$lower) - log(d$entry)); y <- ifelse(is.infinite(d$upper), -Inf, -b * (log(d$upper) - log(d$entry))); sum(x + log(-expm1(y - x))) }, c(.01, 60), maximum = TRUE)
golden("late-entries-loglogistic", "120 lives, all first seen with age: loglogistic", "drawn at random, seed 20261125; Nelder-Mead on R's logistic distribution function",
  table = as_table(d), rel = 1e-6, abs = 1e-7, expected = nine(list(scale = exp(f$par[1]), shape = exp(-f$par[2]), loglik = f$loglik), 8),
  checks = list("the limit of a power of age is less likely" = power$objective < f$loglik - 10, "the likelihood summed again" = near(sum(S(d$lower) - S(d$entry) + ifelse(is.infinite(d$upper), 0, log(-expm1(S(d$upper) - S(d$lower))))), f$loglik, 1e-9)))
