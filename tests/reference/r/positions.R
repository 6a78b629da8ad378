# One position (cylinder, side) beside the others of the same units.  Run in this folder: Rscript positions.R
script_name <- "positions.R"; source("golden.R")

# By definition: the positions of each unit named in every way at random, all ways counted.
positions <- function(id, events, exposure) { # rows: units; columns: positions
  n <- nrow(events); k <- ncol(events)
  over <- events - rowSums(events) * exposure / rowSums(exposure)
  ways <- over[1, ]
  for (i in seq_len(n)[-1]) ways <- as.vector(outer(ways, over[i, ], "+"))
  slack <- 1e-9
  tail2 <- function(s) min(1, 2 * min(mean(ways >= s - slack), mean(ways <= s + slack)))
  share <- exposure / rowSums(exposure)
  one <- function(p) {
    a <- events[, p] * (1 - share[, p]); b <- (rowSums(events) - events[, p]) * share[, p]
    ratio <- sum(a) / sum(b)
    beside <- sapply(seq_len(n), function(i) a[i] - b[i] * sum(a[-i]) / sum(b[-i])) # each unit beside the ratio of the others
    half <- qt(.975, n - 1) * sqrt(sum(beside^2)) / sum(a)
    poisson <- qnorm(.975) * sqrt(.5 * sum(rowSums(events) * share[, p] * (1 - share[, p])) / (sum(a) * sum(b)))
    c(ratio, ratio * exp(-max(half, poisson)), ratio * exp(max(half, poisson)), tail2(sum(over[, p])), tail2(max(ways)), tail2(min(ways)))
  }
  all <- sapply(seq_len(k), one)
  golden(id, "Rate at one position over the rate at the others of the same units, robust limits, exact permutation within units",
    "constructed; every naming of the positions counted", table = data.frame(events = as.vector(t(events)), exposure = as.vector(t(exposure))), rel = 1e-8, abs = 1e-10,
    expected = list(ratio = I(all[1, ]), lower = I(all[2, ]), upper = I(all[3, ]), p = I(all[4, ]), smallest_p = I(pmin(all[5, ], all[6, ]))),
    checks = list("no two sums so near that a grid could take one for the other" = all(sapply(colSums(over), function(s) {
      d <- abs(ways - s); min(c(1, d[d > slack])) > n / 1024 || all(exposure == exposure[1, 1]) }))))
}

set.seed(20261127)
even <- matrix(rpois(9 * 4, rep(rgamma(9, 2, 2), 4) * rep(c(.8, .8, 2, .8), each = 9)), 9)
even <- even[rowSums(even) > 0, ]
positions("positions-even-exposure", even, matrix(800, nrow(even), 4))
uneven <- matrix(c(2, 0, 1, 3, 0, 0, 0, 2, 0, 1, 4, 0, 2, 1, 1), ncol = 3, byrow = TRUE)
hours <- matrix(c(900, 610, 900, 420, 430, 350, 1310, 1010, 1310, 660, 660, 410, 1200, 1200, 777), ncol = 3, byrow = TRUE)
positions("positions-uneven-exposure", uneven, hours)
