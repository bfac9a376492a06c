# usage: Rscript lmer.R TABLE REPETITIONS own|shared
# Prints the least elapsed and the least CPU seconds of fitting the brackets' middles by maximum likelihood with lme4.
suppressMessages(library(lme4))
arguments <- commandArgs(TRUE)
readings <- read.csv(arguments[1], colClasses = c(leg = "character"))
readings$engine <- factor(readings$engine)
readings$valve <- factor(readings$valve)
readings$leg <- factor(readings$leg)
model <- if (arguments[3] == "shared") {
  y ~ x + (1 | leg) + (0 + x | valve) + (0 + x | engine)
} else {
  y ~ x + (1 | leg) + (0 + x | valve)
}
times <- replicate(as.integer(arguments[2]), system.time(lmer(model, readings, REML = FALSE)))
cat(min(times["elapsed", ]), min(times["user.self", ] + times["sys.self", ]))
