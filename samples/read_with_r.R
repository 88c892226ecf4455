# 07: opens a delivered GeoPackage in R and prints what each green's dry places want.
#
#     Rscript samples/read_with_r.R mottle-demo/mottle.gpkg
#
# Needs the package sf (Debian: r-cran-sf). Ends with 1 where an area written differs from that of
# the polygon, or where zones and their green do not cover the same ground.

suppressPackageStartupMessages(library(sf))

path <- commandArgs(trailingOnly = TRUE)
if (length(path) != 1) stop("usage: Rscript read_with_r.R FILE.gpkg")

greens <- st_read(path, "green", quiet = TRUE)
zones <- st_read(path, "zone", quiet = TRUE)
patches <- st_read(path, "patch", quiet = TRUE)
course <- st_read(path, "course", quiet = TRUE)
cat("CRS:", st_crs(greens)$input, "\n")

wrong <- character()
off <- abs(as.numeric(st_area(zones)) - zones$area_m2)
if (any(off > 0.01)) wrong <- c(wrong, sprintf("zone areas differ by up to %.3f m2", max(off)))
for (id in unique(zones$green_id)) {
  for (survey in unique(zones$surv_id[zones$green_id == id])) {
    own <- zones[zones$green_id == id & zones$surv_id == survey, ]
    left <- abs(sum(own$area_m2) - greens$area_m2[greens$green_id == id])
    if (left > 0.01) wrong <- c(wrong, sprintf("green %s, %s: %.3f m2 in no zone", id, survey, left))
  }
}

for (i in seq_len(nrow(course))) {
  row <- course[i, ]
  dry <- patches[patches$green_id == row$green_id & patches$kind == "dry", ]
  cat(sprintf("green %s, %s: %s, grade %s, %d dry patches, water %s L\n",
              row$green_id, row$surv_id, row$history, ifelse(nzchar(row$grade), row$grade, "none"), nrow(dry),
              ifelse(is.na(row$water_l), "not known", format(round(row$water_l, -1)))))
}
if (length(wrong)) {
  writeLines(wrong, stderr())
  quit(status = 1)
}
