# Makes the benchmark files with fixed seeds: Rscript generate.R FOLDER ROWS...
RNGkind("Mersenne-Twister", "Inversion", "Rejection")
arguments <- commandArgs(TRUE); folder <- arguments[1]; dir.create(folder, FALSE, TRUE)
put <- function(d, name, n) write.table(d, file.path(folder, paste0(name, "_", format(n, scientific = FALSE), ".csv")), sep = ",", row.names = FALSE, quote = FALSE, na = "")
for (n in as.numeric(arguments[-1])) {
  set.seed(1000 + log10(n))
  life <- 900 * rweibull(n, 2.2); end <- runif(n, 0, 1600)
  put(data.frame(time = pmax(.1, round(pmin(life, end), 1)), status = (life <= end) * 1), "right", n)

  # Lives found failed at looks about 100 h apart, 30 percent first seen with age, followed for 200 to 1500 h.
  entry <- ifelse(runif(n) < .3, round(runif(n, 50, 600), 1), 0); life <- 900 * (rexp(n) + (entry / 900)^2.2)^(1 / 2.2)
  step <- runif(n, 70, 130); looks <- floor(runif(n, 200, 1500) / step); k <- ceiling((life - entry) / step); failed <- k <= looks
  put(data.frame(entry = entry, lower = round(entry + ifelse(failed, k - 1, looks) * step, 1), upper = ifelse(failed, round(entry + k * step, 1), NA)), "lives", n)

  # The same from new, ages in whole hours: about 10^4 distinct intervals.
  life <- 900 * rweibull(n, 2.2); step <- runif(n, 70, 130); looks <- floor(runif(n, 200, 1500) / step); k <- ceiling(life / step); failed <- k <= looks
  put(data.frame(lower = round(ifelse(failed, k - 1, looks) * step), upper = ifelse(failed, round(k * step), NA)), "intervals", n)

  # Recurrences, about 10 rows a unit, units of different rate.
  m <- n / 10; z <- rgamma(m, 3, 3); stop <- round(runif(m, 500, 2500), 1); events <- rpois(m, z * 9 * stop / 1500); id <- rep(seq_len(m), events)
  time <- pmin(pmax(round(runif(sum(events)) * rep(stop, events), 1), .1), rep(stop, events) - .1); o <- order(id, time); id <- id[o]; time <- time[o]
  again <- c(FALSE, id[-1] == id[-length(id)] & time[-1] == time[-length(time)]); id <- id[!again]; time <- time[!again]
  d <- data.frame(id = c(id, seq_len(m)), stop = c(time, stop), status = c(rep(1, length(id)), rep(0, m))); d <- d[order(d$id, d$stop, -d$status), ]
  d$start <- c(0, d$stop[-nrow(d)]); d$start[!duplicated(d$id)] <- 0
  put(d[, c("id", "start", "stop", "status")], "recurrences", n)
}
