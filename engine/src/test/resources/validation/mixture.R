# Common-variance mixtures of two normals on Old Faithful's waiting times (R's own `faithful`,
# Azzalini & Bowman 1990): one survey by mclust's model E and by direct maximisation; two surveys
# (the first and the last 136 eruptions, the last shifted by -20) by direct maximisation.
# Writes faithful_waiting.csv and mixture.csv. Ran with R 4.2.2, mclust 6.0.0.
suppressMessages(library(mclust))
write.csv(data.frame(waiting = faithful$waiting), "faithful_waiting.csv", row.names = FALSE, quote = FALSE)
# p: upper means, log depths (one or one a survey), log sigma, logit of the lower share
nll <- function(p, z, s, own) {
  m <- max(s); k <- if (own) m else 1
  mu <- p[1:m][s]; d <- exp(p[m + 1:k]); d <- if (own) d[s] else d
  sg <- exp(p[m + k + 1]); w <- plogis(p[m + k + 2])
  -sum(log(w * dnorm(z, mu - d, sg) + (1 - w) * dnorm(z, mu, sg)))
}
direct <- function(z, s, own) {
  m <- max(s); k <- if (own) m else 1
  p <- c(tapply(z, s, quantile, 0.75), rep(log(20), k), log(6), 0)
  for (i in 1:6) {
    p <- optim(p, nll, z = z, s = s, own = own, method = "BFGS", control = list(reltol = 1e-16, maxit = 1e4))$par
    p <- optim(p, nll, z = z, s = s, own = own, control = list(reltol = 1e-16, maxit = 1e5))$par
  }
  p <- nlm(nll, p, z = z, s = s, own = own, gradtol = 1e-12, steptol = 1e-12, iterlim = 1000)$estimate
  list(upper = p[1:m], depth = rep(exp(p[m + 1:k]), length.out = m), sigma = exp(p[m + k + 1]),
       share = plogis(p[m + k + 2]), ll = -nll(p, z, s, own), k = m + k + 2)
}
dbic <- function(z, s, ll, k) {
  n <- length(z); m <- max(s); v <- mean((z - ave(z, s))^2)
  one <- -n / 2 * (log(2 * pi * v) + 1)
  ((m + 1) * log(n) - 2 * one) - (k * log(n) - 2 * ll)
}
row <- function(name, r, z, s) data.frame(case = name, upper1 = r$upper[1], upper2 = r$upper[length(r$upper)],
  depth1 = r$depth[1], depth2 = r$depth[length(r$depth)], sigma = r$sigma, share = r$share, loglik = r$ll,
  dbic = dbic(z, s, r$ll, r$k))
z <- faithful$waiting; one <- rep(1, length(z))
e <- Mclust(z, G = 2, modelNames = "E", control = emControl(tol = 1e-15, itmax = 1e6), verbose = FALSE)$parameters
ll <- Mclust(z, G = 2, modelNames = "E", control = emControl(tol = 1e-15, itmax = 1e6), verbose = FALSE)$loglik
em <- list(upper = e$mean[[2]], depth = e$mean[[2]] - e$mean[[1]], sigma = sqrt(e$variance$sigmasq), share = e$pro[1], ll = ll, k = 4)
s <- rep(1:2, each = 136); z2 <- z - 20 * (s == 2)
out <- rbind(row("mclust", em, z, one), row("direct", direct(z, one, FALSE), z, one),
  row("two-common", direct(z2, s, FALSE), z2, s), row("two-own", direct(z2, s, TRUE), z2, s))
out[-1] <- lapply(out[-1], formatC, digits = 12, format = "g", width = 1)
write.csv(out, "mixture.csv", row.names = FALSE, quote = FALSE)
