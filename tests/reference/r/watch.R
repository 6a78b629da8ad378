# Alert levels.  Run in this folder: Rscript watch.R
script_name <- "watch.R"
source("golden.R")

n <- c(3, 5, 2, 4, 6, 3, 4, 2, 5, 4, 3, 7); t <- c(820, 905, 780, 860, 1010, 940, 890, 760, 930, 880, 850, 1015)
r <- 1000 * n / t; run <- function(v) sapply(1:10, function(i) sum(v[i:(i + 2)])); pooled <- sum(n) / sum(t); avg <- run(r) / 3
x <- 0:60
golden("alert-levels-twelve-months", "One year of findings, ten alert levels per 1,000 h", "constructed; definitions as in Transport Canada AMA 571.101/1 appendix A and common practice",
  table = data.frame(events = n, hours = t), parameters = list(coming_hours = 900), rel = 1e-10, abs = 1e-12,
  expected = list(MeanPlusTwoDeviations = mean(r) + 2 * sd(r), MeanPlusTwoAndAHalfDeviations = mean(r) + 2.5 * sd(r), MeanPlusThreeDeviations = mean(r) + 3 * sd(r),
    MeanPlusTwoPopulationDeviations = mean(r) + 2 * sd(r) * sqrt(11 / 12), ThreeMonthPooledRateTimesOnePointThree = 1.3 * mean(1000 * run(n) / run(t)),
    ThreeMonthAverageRateTimesOnePointThree = 1.3 * mean(avg), ThreeMonthMeanPlusTwoDeviations = mean(avg) + 2 * sd(avg),
    PooledPlusTwoPoissonDeviations = 1000 * (pooled + 2 * sqrt(pooled / 900)), PooledPlusThreePoissonDeviations = 1000 * (pooled + 3 * sqrt(pooled / 900)),
    ExactPoissonUpperTail = 1000 * x[which(ppois(x - 1, 900 * pooled, lower.tail = FALSE) <= .025)[1]] / 900))
