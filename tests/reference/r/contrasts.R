# Two sets of lives against each other.  Run in this folder: Rscript contrasts.R
script_name <- "contrasts.R"
source("golden.R"); source("life_functions.R")

x <- read.csv("../breast-cosmesis-two-arms/data.csv")
y <- Surv(ifelse(x$lower == 0, NA, x$lower), x$upper, type = "interval2")
control <- survreg.control(rel.tolerance = 1e-13, maxiter = 200)
both <- function(dist) {
  fit <- function(keep) survreg(y[keep] ~ 1, dist = dist, control = control)
  a <- fit(x$arm == 1); b <- fit(x$arm == 2); all <- fit(x$arm > 0)
  median <- function(f) predict(f, newdata = data.frame(one = 1), type = "uquantile", p = 0.5, se.fit = TRUE)
  ma <- median(a); mb <- median(b)
  log_ratio <- unname(ma$fit[1] - mb$fit[1]); se <- unname(sqrt(ma$se.fit[1]^2 + mb$se.fit[1]^2))
  lr <- 2 * (a$loglik[1] + b$loglik[1] - all$loglik[1])
  list(ratio = exp(log_ratio), lower = exp(log_ratio - qnorm(.975) * se), upper = exp(log_ratio + qnorm(.975) * se), likelihood_ratio = lr,
       p = pchisq(lr, 2, lower.tail = FALSE))
}
w <- both("weibull"); l <- both("lognormal")
known <- regmatches(t <- paste(readLines("../breast-cosmesis-two-arms/expected.json"), collapse = ""), regexpr("lr_both_free\": [0-9.]+", t))
golden("two-arms-contrast", "Ratio of medians with delta-method limits on the logarithm; likelihood ratio of separate against common parameters",
  "interval-censored lives of breast-cosmesis-two-arms; fits, standard errors of the quantile and log-likelihoods by survreg of the R package survival",
  expected = nine(list(weibull = w, lognormal = l)), rel = 1e-5, abs = 1e-8,
  checks = list("the likelihood ratio of breast-cosmesis-two-arms" = abs(as.numeric(sub(".*: ", "", known)) - w$likelihood_ratio) < 1e-5))
