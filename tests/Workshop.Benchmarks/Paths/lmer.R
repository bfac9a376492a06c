# usage: Rscript lmer.R TABLE REPETITIONS
# Prints the least elapsed seconds of fitting the brackets' middles by maximum likelihood with lme4.
suppressMessages(library(lme4))
arguments <- commandArgs(TRUE)
readings <- read.csv(arguments[1], colClasses = c(leg = "character"))
readings$valve <- factor(readings$valve)
readings$leg <- factor(readings$leg)
times <- replicate(as.integer(arguments[2]), system.time(
  lmer(y ~ x + (1 | leg) + (0 + x | valve), readings, REML = FALSE))["elapsed"])
cat(min(times), "\n")
