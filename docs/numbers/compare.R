# Open data and what gstat makes of them, for compare.py, which runs Mottle on the same files.
# Usage: Rscript compare.R FOLDER. Writes CSVs with 17 significant digits into FOLDER.
suppressMessages({library(sp); library(gstat)})
folder <- commandArgs(TRUE)[1]

write17 <- function(d, name) {
  for (n in names(d)) if (is.double(d[[n]])) d[[n]] <- sprintf("%.17g", d[[n]])
  write.csv(d, file.path(folder, paste0(name, ".csv")), row.names = FALSE, quote = FALSE)
}
spatial <- function(d) { coordinates(d) <- ~x+y; d }
sph <- function(m) vgm(m[2], "Sph", m[3], nugget = m[1])

vgms <- fits <- estimates <- scores <- facts <- NULL
fact <- function(key, value) facts <<- rbind(facts, data.frame(key = key, 
  value = if (is.numeric(value)) sprintf("%.17g", value) else value))
addVgm <- function(set, case, v)
  vgms <<- rbind(vgms, data.frame(set = set, case = case, dir = v$dir.hor, np = v$np, dist = v$dist, gamma = v$gamma))
addFit <- function(set, model, method, v, start) {
  f <- suppressWarnings(fit.variogram(v, start, fit.method = method))
  fits <<- rbind(fits, data.frame(set = set, model = model, method = method, nugget = f$psill[1],
    psill = f$psill[2], range = f$range[2], sse = attr(f, "SSErr"), singular = attr(f, "singular")))
}
addEstimate <- function(set, case, k) {
  variance <- if (is.null(k$var1.var)) NA_real_ else as.double(k$var1.var)
  estimates <<- rbind(estimates, data.frame(set = set, case = case, place = seq_along(k$var1.pred),
    estimate = k$var1.pred, variance = variance))
}
addScore <- function(set, case, cv) scores <<- rbind(scores, data.frame(set = set, case = case,
  me = mean(cv$residual), rmse = sqrt(mean(cv$residual^2)), mae = mean(abs(cv$residual)),
  msdr = if (is.null(cv$zscore)) NA_real_ else mean(cv$zscore^2)))

lags <- function(set, s, cutoff, width) {
  addVgm(set, "default", variogram(z ~ 1, s))
  addVgm(set, "chosen", variogram(z ~ 1, s, cutoff = cutoff, width = width))
  addVgm(set, "cressie-hawkins", variogram(z ~ 1, s, cutoff = cutoff, width = width, cressie = TRUE))
  addVgm(set, "directional", variogram(z ~ 1, s, alpha = c(0, 45, 90, 135), cutoff = cutoff, width = 2 * width))
}
models <- c(Sph = 2, Exp = 6, Gau = 4, Cir = 2, Pen = 2, Mat = 10)
# in how many of the fifteen default lags another cutoff counts other pairs
otherPairs <- function(set, s) {
  diagonal <- sqrt(sum(apply(bbox(s), 1, diff)^2))
  default <- variogram(z ~ 1, s)$np
  changed <- function(cutoff) { np <- variogram(z ~ 1, s, cutoff = cutoff, width = cutoff / 15)$np; sum(np != default) }
  fact(paste0(set, ".lags.third"), changed(diagonal / 3))
  fact(paste0(set, ".lags.33333"), changed(0.33333 * diagonal))
}
allFits <- function(set, s, methods) {
  v <- variogram(z ~ 1, s)
  for (m in names(models)) for (w in methods) addFit(set, m, w, v,
    vgm(var(s$z) / 2, m, max(v$dist) / models[[m]], nugget = var(s$z) / 2, kappa = 1.5))
}
kriging <- function(set, s, p, m, near, radius, block) {
  k <- function(case, ...) addEstimate(set, case, krige(z ~ 1, s, p, ..., debug.level = 0))
  k("ordinary", model = sph(m))
  k("nearest", model = sph(m), nmax = near)
  k("nearest-radius", model = sph(m), nmax = near, maxdist = radius)
  k("simple", model = sph(m), beta = mean(s$z))
  k("block", model = sph(m), block = c(block, block))
  k("measurement", model = vgm(m[2], "Sph", m[3], add.to = vgm(m[1], "Err", 0)))
  k("anisotropic", model = vgm(m[2], "Sph", m[3], nugget = m[1], anis = c(30, 0.5)))
  addEstimate(set, "plane", krige(z ~ x + y, s, p, sph(m), debug.level = 0))
  addEstimate(set, "idw2", idw(z ~ 1, s, p, idp = 2, debug.level = 0))
  addEstimate(set, "idw2-nearest", idw(z ~ 1, s, p, idp = 2, nmax = near, debug.level = 0))
}
study <- function(set, d, places, m, cutoff, width, near, radius, block) {
  write17(d, paste0(set, "_points")); write17(places, paste0(set, "_places"))
  s <- spatial(d); p <- spatial(places)
  fact(paste0(set, ".mean"), mean(d$z)); fact(paste0(set, ".variance"), var(d$z))
  lags(set, s, cutoff, width)
  otherPairs(set, s)
  allFits(set, s, c(7, 1, 6, 2))
  kriging(set, s, p, m, near, radius, block)
  addScore(set, "ordinary", krige.cv(z ~ 1, s, sph(m), verbose = FALSE, debug.level = 0))
  addScore(set, "nearest", krige.cv(z ~ 1, s, sph(m), nmax = near, verbose = FALSE, debug.level = 0))
  addScore(set, "idw2", krige.cv(z ~ 1, s, set = list(idp = 2), verbose = FALSE, debug.level = 0))
}

data(meuse); data(meuse.grid)
cells <- seq(1, nrow(meuse.grid), by = 40)
study("meuse", data.frame(x = meuse$x, y = meuse$y, z = log(meuse$zinc)),
  rbind(data.frame(x = meuse.grid$x[cells], y = meuse.grid$y[cells]), data.frame(x = c(meuse$x[10], 178000), y = c(meuse$y[10], 334000))),
  c(0.05066243, 0.5906078, 897), 1500, 100, 12, 400, 40)

data(jura)
study("jura", data.frame(x = round(jura.pred$Xloc * 1000), y = round(jura.pred$Yloc * 1000), z = jura.pred$Cd),
  data.frame(x = round(jura.val$Xloc * 1000), y = round(jura.val$Yloc * 1000)),
  c(0.3, 0.5, 1200), 2000, 80, 16, 600, 50)

# places off the lattice of the data, so that no two data are equally near
data(walker)
w <- data.frame(x = coordinates(walker)[, 1], y = coordinates(walker)[, 2], z = walker$V)
e <- as.data.frame(walker.exh)
e <- e[seq(1, nrow(e), by = 400), ]
study("walker", w, data.frame(x = e$X + 0.37, y = e$Y + 0.21), c(30000, 50000, 30), 100, 10, 16, 20, 5)
# and on it: ties
lattice <- data.frame(x = e$X, y = e$Y)
write17(lattice, "ties_places")
addEstimate("ties", "nearest", krige(z ~ 1, spatial(w), spatial(lattice), sph(c(30000, 50000, 30)), nmax = 16, debug.level = 0))

# 10,000 random points
set.seed(20310502)
r <- data.frame(x = runif(10000) * 1000, y = runif(10000) * 1000)
r$z <- 20 + 3 * sin(r$x / 80) + 2 * cos(r$y / 55) + rnorm(10000)
write17(r, "random_points")
places <- data.frame(x = runif(500) * 1000, y = runif(500) * 1000)
write17(places, "random_places")
s <- spatial(r); p <- spatial(places)
fact("random.mean", mean(r$z)); fact("random.variance", var(r$z))
lags("random", s, 200, 10)
otherPairs("random", s)
allFits("random", s, c(7, 1, 6))
m <- c(1, 6.5, 150)
addEstimate("random", "nearest", krige(z ~ 1, s, p, sph(m), nmax = 32, debug.level = 0))
addEstimate("random", "nearest-radius", krige(z ~ 1, s, p, sph(m), nmax = 32, maxdist = 15, debug.level = 0))
addEstimate("random", "block", krige(z ~ 1, s, p, sph(m), nmax = 32, block = c(10, 10), debug.level = 0))
addEstimate("random", "plane", krige(z ~ x + y, s, p, sph(m), nmax = 32, debug.level = 0))
addEstimate("random", "idw2", idw(z ~ 1, s, p, idp = 2, debug.level = 0))
addEstimate("random", "idw2-nearest", idw(z ~ 1, s, p, idp = 2, nmax = 32, debug.level = 0))

# meuse in other units and far from the origin
scales <- list(thousandth = c(1e-3, 0), million = c(1e6, 0), shifted = c(1, 5e6), thousandthShifted = c(1e-3, 5e6), millionShifted = c(1e6, 5e6))
for (n in names(scales)) {
  f <- scales[[n]][1]; move <- scales[[n]][2]
  d <- data.frame(x = meuse$x + move, y = meuse$y + move, z = f * log(meuse$zinc))
  places <- data.frame(x = meuse.grid$x[cells] + move, y = meuse.grid$y[cells] + move)
  write17(d, paste0(n, "_points")); write17(places, paste0(n, "_places"))
  fact(paste0(n, ".mean"), mean(d$z)); fact(paste0(n, ".variance"), var(d$z))
  s <- spatial(d); p <- spatial(places)
  lags(n, s, 1500, 100)
  addFit(n, "Sph", 7, variogram(z ~ 1, s), vgm(var(d$z) / 2, "Sph", 800, nugget = var(d$z) / 2))
  kriging(n, s, p, c(0.05066243 * f^2, 0.5906078 * f^2, 897), 12, 400, 40)
}

# conventions
two <- spatial(data.frame(x = c(0, 0, 10, 20), y = 0, z = c(1, 4, 2, 7)))
v <- variogram(z ~ 1, two, cutoff = 30, width = 10)
fact("coincident.pairs.first", v$np[1]); fact("coincident.distance.first", v$dist[1])
fact("coincident.gamma.first", v$gamma[1])
s <- spatial(data.frame(x = meuse$x, y = meuse$y, z = log(meuse$zinc))); v <- variogram(z ~ 1, s)
start <- vgm(1, "Sph", 900, nugget = 1); f <- fit.variogram(v, start, fit.method = 2)
sum2 <- function(w, m) sum(v$np / variogramLine(w, dist_vector = v$dist)$gamma^2 * (v$gamma - variogramLine(m, dist_vector = v$dist)$gamma)^2)
fact("cressie.reported", attr(f, "SSErr")); fact("cressie.start", sum2(start, f)); fact("cressie.itself", sum2(f, f))
fact("cressie.nugget", f$psill[1]); fact("cressie.psill", f$psill[2]); fact("cressie.range", f$range[2])

fact("R", R.version.string); fact("gstat", as.character(packageVersion("gstat"))); fact("sp", as.character(packageVersion("sp")))
write17(vgms, "vgm"); write17(fits, "fits"); write17(estimates, "estimates"); write17(scores, "scores")
write.csv(facts, file.path(folder, "facts.csv"), row.names = FALSE)
