# The same survey by ordinary kriging of gstat, for the figures in Sample04FloodPlainTest.
# Run in the root of the project: Rscript samples/flood-plain/gstat.R
suppressMessages({library(sf); library(gstat)})
outline <- st_read("samples/flood-plain/outline.gpkg", quiet = TRUE)
samples <- st_as_sf(read.csv("samples/flood-plain/samples.csv"), coords = c("x", "y"), crs = 28992)
# the best model by restricted maximum likelihood, as table vgm has it: gstat fits by least squares
model <- vgm(23.729, "Sph", 1965.1, 2.391)
box <- st_bbox(outline)
cells <- expand.grid(x = seq(box[1] + 10, box[3], 20), y = seq(box[2] + 10, box[4], 20))
cells <- st_as_sf(cells, coords = c("x", "y"), crs = 28992)
cells <- cells[lengths(st_intersects(cells, outline)) > 0, ]
om <- krige(om ~ 1, samples, cells, model, debug.level = 0)$var1.pred
print(model)
cat("mean", mean(om), "% hectares below 5 %", sum(om < 5) * 0.04,
    "between", sum(om >= 5 & om <= 10) * 0.04, "above 10 %", sum(om > 10) * 0.04, "\n")
