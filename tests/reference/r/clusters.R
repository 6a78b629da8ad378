# Common rate of units that differ: limits from the spread between units, each beside the rate of the others.
script_name <- "clusters.R"; source("golden.R")

close <- glm.control(epsilon = 1e-14, maxit = 100)
# The variance by its definition: a Poisson regression without each unit predicts it; what it had more or less is squared.
beside_others <- function(x, t) sapply(seq_along(x), function(i) {
  others <- glm(x[-i] ~ 1 + offset(log(t[-i])), family = poisson, control = close)
  x[i] - t[i] * exp(coef(others)[[1]])
})
clustered <- function(id, method, source, x, t) {
  all <- glm(x ~ 1 + offset(log(t)), family = poisson, control = close)
  error <- sqrt(sum(beside_others(x, t)^2)) / sum(x)
  limit <- function(conf, side) exp(coef(all)[[1]] + side * qt((1 + conf) / 2, length(x) - 1) * error)
  # The same from the score's parts: bread 1/N, meat of the squared residuals over (1 - leverage)^2.
  residual <- residuals(all, "response") / (1 - hatvalues(all))
  golden(id, method, source, table = data.frame(events = x, exposure = t), rel = 1e-7, abs = 1e-12,
    expected = list(rate = exp(coef(all)[[1]]), lower = limit(.95, -1), upper = limit(.95, 1), lower_99 = limit(.99, -1), upper_99 = limit(.99, 1),
      dispersion = sum(residuals(all, "pearson")^2) / df.residual(all)), # summary() has the weights of the step before the last
    checks = list("leverage-corrected residuals of one regression" = abs(sqrt(sum(residual^2)) / sum(x) / error - 1) < 1e-7))
}

p <- read.csv("../pump-failures/data.csv")
clustered("clustered-rate-pumps", "Common failure rate of ten pumps, robust to pumps that differ: sandwich on the logarithm, Student's t", "data of Gaver and O'Muircheartaigh 1987; variance of Mancl and DeRouen 2001 for one mean", p$events, p$exposure)
a <- read.csv("../sim2-cracks-aircraft/data.csv")
clustered("clustered-rate-aircraft", "Common rate of sixty simulated aircraft over what is expected of them, the same", "simulated, seed 20240602 (see sim2-cracks)", a$events, a$expected)
