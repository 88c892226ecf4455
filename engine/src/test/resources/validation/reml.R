# Restricted log likelihood of log cadmium in the soils of the Swiss Jura (gstat::jura.pred; Goovaerts
# 1997, Geostatistics for Natural Resources Evaluation) with a plane for each land use, or a mean for the
# first seven samples of each, and one variogram for all: nlme::gls. The first 60 samples of each land
# use of 30 and more; groups 1 is meadow alone.
# "at": at given practical range (m), nugget and sill; "best": where gls finds it greatest.
# Writes reml_points.csv and reml.csv. Ran with R 4.2.2, nlme 3.1.162, gstat 2.1.0.
library(nlme)
data(jura, package = "gstat")
d <- with(jura.pred, data.frame(x = 1000 * Xloc, y = 1000 * Yloc, z = log(Cd), g = as.character(Landuse)))
d <- d[d$g %in% c("Forest", "Pasture", "Meadow"), ]
d <- d[ave(seq_along(d$g), d$g, FUN = seq_along) <= 60, ]
write.csv(format(d, digits = 17, trim = TRUE), "reml_points.csv", row.names = FALSE, quote = FALSE)
d$u <- (d$x - mean(d$x)) / 1000
d$v <- (d$y - mean(d$y)) / 1000
practical <- c(spherical = 1, exponential = -log(0.05))
cor <- function(model, range, share, fixed) {
  make <- c(spherical = corSpher, exponential = corExp)[[model]]
  make(c(range / practical[[model]], share), form = ~ x + y | g, nugget = TRUE, fixed = fixed)
}
d$rank <- ave(seq_along(d$g), d$g, FUN = seq_along)
data_of <- function(groups, trend) {
  if (groups == 1) d[d$g == "Meadow" & (trend == "plane" | d$rank <= 7), ]
  else d[trend == "plane" | d$rank <= 7, ]
}
trend_of <- function(groups, trend) {
  if (groups == 1) (if (trend == "mean") z ~ 1 else z ~ u + v)
  else (if (trend == "mean") z ~ g else z ~ g / (u + v))
}
at <- function(model, groups, trend, range, nugget, sill) {
  fit <- gls(trend_of(groups, trend), data_of(groups, trend), method = "REML",
             correlation = cor(model, range, nugget / (nugget + sill), TRUE),
             control = glsControl(sigma = sqrt(nugget + sill)))
  data.frame(kind = "at", model, groups, trend, range, nugget, sill, loglik = as.numeric(logLik(fit)))
}
best <- function(model, groups, trend) {
  fits <- lapply(c(400, 800), function(start) tryCatch(
    gls(trend_of(groups, trend), data_of(groups, trend), method = "REML",
        correlation = cor(model, start, 0.2, FALSE),
        control = glsControl(tolerance = 1e-10, msTol = 1e-12, msMaxIter = 500, maxIter = 500)),
    error = function(e) NULL))
  fits <- Filter(Negate(is.null), fits)
  fit <- fits[[which.max(sapply(fits, logLik))]]
  p <- coef(fit$modelStruct$corStruct, unconstrained = FALSE)
  data.frame(kind = "best", model, groups, trend, range = p[[1]] * practical[[model]],
             nugget = fit$sigma^2 * p[[2]], sill = fit$sigma^2 * (1 - p[[2]]),
             loglik = as.numeric(logLik(fit)))
}
rows <- list()
for (model in names(practical)) for (groups in c(1, 3)) for (trend in c("mean", "plane")) {
  for (p in list(c(300, 0.05, 0.4), c(700, 0.1, 0.35), c(700, 0.3, 0.1), c(1500, 0.1, 0.6)))
    rows[[length(rows) + 1]] <- at(model, groups, trend, p[1] * (if (trend == "mean") 5 else 1), p[2], p[3])
  if (trend == "plane") rows[[length(rows) + 1]] <- best(model, groups, trend)
}
out <- do.call(rbind, rows)
out[5:8] <- lapply(out[5:8], function(v) formatC(v, digits = 15, format = "g"))
write.csv(out, "reml.csv", row.names = FALSE, quote = FALSE)
