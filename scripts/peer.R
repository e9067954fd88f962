# What scripts/bench --peers measures beside the program: the same figures in R, read by data.table.
# Rscript scripts/peer.R LOG.csv prints the line of sums that scripts/peer.py describes.
suppressPackageStartupMessages(library(data.table))

log <- fread(commandArgs(TRUE)[1], select = c("mold", "mass_kg", "thickness_mm"))

# How many of the last `wide` points are flagged; points before the first are not.
last <- function(flags, wide) {
  sums <- cumsum(flags)
  sums - c(integer(min(wide, length(flags))), head(sums, -wide))
}
ending <- function(flags, length) last(flags, length) == length
some <- function(flags, least, wide) flags & last(flags, wide) >= least

judge <- function(x, lower, upper) {
  center <- mean(x)
  step <- diff(x)
  sigma <- mean(abs(step)) * sqrt(pi) / 2
  turning <- sign(step[-1]) * sign(step[-length(step)]) < 0
  above <- function(k) x > center + k * sigma
  below <- function(k) x < center - k * sigma
  room <- min(upper - center, center - lower)
  c(
    length(x),
    sum(above(3) | below(3)),
    sum(ending(x > center, 9) | ending(x < center, 9)),
    sum(ending(step > 0, 5) | ending(step < 0, 5)),
    sum(ending(turning, 12)),
    sum(some(above(2), 2, 3) | some(below(2), 2, 3)),
    sum(some(above(1), 4, 5) | some(below(1), 4, 5)),
    sum(ending(x > center - sigma & x < center + sigma, 15)),
    sum(ending(above(1) | below(1), 8)),
    room / (3 * sigma),
    room / (3 * sd(x))
  )
}

tell <- function(name, values, lower, upper) {
  sums <- Reduce(`+`, lapply(split(values, log$mold), judge, lower, upper))
  cat(name, format(sums[1:9], scientific = FALSE, trim = TRUE), sprintf("%.6f", sums[10:11]), "\n", sep = " ")
}
tell("mass", log$mass_kg, 380, 400)
tell("thickness", log$thickness_mm, 42, 47)
