# Six rows with ties, for the steps of a mean function.  Run in this folder: Rscript survival.R
script_name <- "survival.R"
source("golden.R"); source("life_functions.R")
case <- function(id, method, source, d, expected, ..., rel = 1e-8, abs = 1e-11) golden(id, method, source, table = d, expected = expected, ..., rel = rel, abs = abs)
rows <- function(time, status, entry = 0) as_table(lives(time, ifelse(status == 1, time, Inf), entry))

t1 <- data.frame(time = c(9, 1, 1, 6, 6, 8), status = c(1, 1, 0, 1, 1, 0)); s <- survfit(Surv(time, status) ~ 1, t1)
case("six-rows-with-ties", "Kaplan-Meier and Nelson-Aalen, six rows with ties", "Therneau and Grambsch 2000, appendix, data set 1 (tests of the survival package): hazard 1/6, then + 2/4; influences in 72nds and 144ths printed there", rows(t1$time, t1$status),
  c(points(s), list(tied_hazard = I(survfit(Surv(time, status) ~ 1, t1, ctype = 2)$cumhaz[s$n.event > 0]), at_risk_at_8 = s$n.risk[s$time == 8], survival_at_8 = s$surv[s$time == 8], hazard_influence_variance = I(c(sum((c(10, rep(-2, 5)) / 72)^2), sum((c(10, -2, 7, 7, -11, -11) / 72)^2))),
    survival_influence_variance = I(c(sum((c(-20, rep(4, 5)) / 144)^2), sum((c(-10, 2, -13, -13, 17, 17) / 144)^2))))), rel = 1e-10, abs = 1e-13,
  checks = list("1/6 + 1/4 + 1/3" = isTRUE(all.equal(survfit(Surv(time, status) ~ 1, t1, ctype = 2)$cumhaz[2], 3/4))))
