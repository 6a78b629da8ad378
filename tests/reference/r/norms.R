# Norms, shrinkage and many tests at once.  Run in this folder: Rscript norms.R
script_name <- "norms.R"
source("golden.R")

p <- c(.0001,.0004,.0019,.0095,.0201,.0278,.0298,.0344,.0459,.3240,.4262,.5719,.6528,.7590,1.0000)
q <- p.adjust(p, "BH")
golden("bh-1995", "Adjusted p-values of 15 tests", "Benjamini and Hochberg 1995, worked example: four rejected at 0.05, three by Bonferroni and by Hochberg; R stats::p.adjust",
  table = data.frame(p = p), rel = 1e-10, abs = 1e-14,
  expected = list(false_discovery = q, under_dependence = p.adjust(p, "BY"), holm = p.adjust(p, "holm"), hochberg = p.adjust(p, "hochberg"), bonferroni = p.adjust(p, "bonferroni")),
  published = list(rejected_false_discovery = 4, rejected_bonferroni = 3, rejected_hochberg = 3), checks = list("the published four" = sum(q <= .05) == 4))

# Leave one out: law of a sum of binomials by direct convolution of dbinom.
d <- data.frame(stratum = rep(c("riser-1", "riser-2", "muffler"), each = 5), unit = rep(c("A", "B", "C", "D", "E"), 3),
  events = c(2, 0, 1, 7, 1, 0, 1, 0, 3, 0, 1, 2, 0, 1, 0), hours = c(820.4, 410, 633.3, 905.1, 120, 820.4, 410, 0, 905.1, 120, 300, 410, 633.3, 700.5, 0))
units <- unique(d$unit)
one <- function(u) {
  law <- 1; o <- 0; e <- 0
  for (s in unique(d$stratum)) { x <- d[d$stratum == s, ]; own <- x[x$unit == u, ]; others <- x[x$unit != u, ]
    if (own$hours == 0) next
    n <- sum(x$events); b <- dbinom(0:n, n, own$hours / sum(x$hours))
    new <- numeric(length(law) + n); for (i in seq_along(law)) for (j in seq_along(b)) new[i + j - 1] <- new[i + j - 1] + law[i] * b[j]
    law <- new; o <- o + own$events; e <- e + own$hours * sum(others$events) / sum(others$hours) }
  k <- seq_along(law) - 1
  c(observed = o, expected = e, upper = sum(law[k >= o]), lower = sum(law[k <= o]))
}
r <- t(sapply(units, one))
drive <- d[d$stratum == "riser-1", ]; ownD <- drive$unit == "D"
# Interval of a rate ratio common to all strata: the same law with the unit's hours multiplied by the ratio, solved for each tail.
tails <- function(u, ratio) {
  law <- 1; o <- 0
  for (s in unique(d$stratum)) { x <- d[d$stratum == s, ]; own <- x[x$unit == u, ]; others <- x[x$unit != u, ]
    if (own$hours == 0) next
    n <- sum(x$events); b <- dbinom(0:n, n, ratio * own$hours / (ratio * own$hours + sum(others$hours)))
    new <- numeric(length(law) + n); for (i in seq_along(law)) for (j in seq_along(b)) new[i + j - 1] <- new[i + j - 1] + law[i] * b[j]
    law <- new; o <- o + own$events }
  k <- seq_along(law) - 1
  c(upper = sum(law[k >= o]), lower = sum(law[k <= o]))
}
limit <- function(u, tail) exp(uniroot(function(x) tails(u, exp(x))[[tail]] - 0.025, c(-15, 15), tol = 1e-13)$root)
ratioLower <- sapply(units, function(u) if (r[u, "observed"] == 0) 0 else limit(u, "upper"))
ratioUpper <- sapply(units, limit, tail = "lower")
golden("leave-one-out-three-strata", "Each unit against the others over three strata, exact conditional chances", "constructed; sums of binomials convolved in R",
  table = d, rel = 1e-9, abs = 1e-13,
  expected = list(observed = r[, 1], expected = r[, 2], upper = r[, 3], lower = r[, 4], ratio = r[, 1] / r[, 2], ratio_lower = ratioLower, ratio_upper = ratioUpper,
    riser_1_of_D = list(expected = drive$hours[ownD] * sum(drive$events[!ownD]) / sum(drive$hours[!ownD]),
      upper = pbinom(drive$events[ownD] - 1, sum(drive$events), drive$hours[ownD] / sum(drive$hours), lower.tail = FALSE))))
