#!/usr/bin/env python3
"""Runs gstat (through compare.R) and Mottle on the same open data and writes docs/numbers.md.

Usage, from the root of the repository, after `mvn package`:

    python3 docs/numbers/compare.py

Needs R with the packages gstat and sp, a Java 17, and export/target/mottle.jar. Ends with exit code 1
if a difference is above the tolerance of its kind, so it can stand in a build.
"""
import csv
import json
import math
import os
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve().parent
ROOT = HERE.parent.parent
JAR = ROOT / "export" / "target" / "mottle.jar"
PAGE = ROOT / "docs" / "numbers.md"

TOLERANCE = {"lags": 1e-8, "point": 1e-8, "block": 1e-6, "sse": 1e-6}
NAMES = {"Sph": "spherical", "Exp": "exponential", "Gau": "gaussian", "Cir": "circular", "Pen": "pentaspherical", "Mat": "matern"}
WEIGHTS = {"7": "pairs-over-lag-squared", "1": "pairs", "6": "equal", "2": "cressie"}
TITLES = {
    "meuse": "Meuse: logarithm of zinc, 155 points (sp; Burrough & McDonnell 1998)",
    "jura": "Jura: cadmium, 259 points, km turned into whole metres (gstat; Goovaerts 1997)",
    "walker": "Walker Lake: V, 470 points on a lattice of 1 m (gstat; Isaaks & Srivastava 1989)",
    "random": "10,000 random points in a square of 1 km, made by compare.R",
    "thousandth": "Meuse, values times 0.001",
    "million": "Meuse, values times 1,000,000",
    "shifted": "Meuse, coordinates moved by 5,000,000 m both ways",
    "thousandthShifted": "Meuse, values times 0.001, coordinates moved by 5,000,000 m",
    "millionShifted": "Meuse, values times 1,000,000, coordinates moved by 5,000,000 m",
}
MODEL = {"meuse": (0.05066243, 0.5906078, 897), "jura": (0.3, 0.5, 1200), "walker": (30000, 50000, 30), "random": (1, 6.5, 150)}
SCALE = {"thousandth": 1e-3, "million": 1e6, "shifted": 1, "thousandthShifted": 1e-3, "millionShifted": 1e6}
for name, factor in SCALE.items():
    MODEL[name] = (0.05066243 * factor ** 2, 0.5906078 * factor ** 2, 897)
MEUSE = dict(lags=(1500, 100), near=12, radius=400, block=40)
CHOICE = {
    "meuse": MEUSE,
    "jura": dict(lags=(2000, 80), near=16, radius=600, block=50),
    "walker": dict(lags=(100, 10), near=16, radius=20, block=5),
    "random": dict(lags=(200, 10), near=32, radius=15, block=10),
    **{name: MEUSE for name in SCALE},
}


def main():
    if not JAR.exists():
        sys.exit(f"{JAR} is not there; run 'mvn package' first")
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch)
        run(["Rscript", str(HERE / "compare.R"), scratch])
        page = Page(Gstat(folder), Mottle(folder), Ties(folder))
        text = page.write()
    PAGE.write_text(text, encoding="utf-8")
    print(f"{PAGE.relative_to(ROOT)}: {page.checks} comparisons, {len(page.failures)} above their tolerance")
    for failure in page.failures:
        print(failure)
    sys.exit(1 if page.failures else 0)


def run(command):
    done = subprocess.run(command, capture_output=True, text=True)
    if done.returncode not in (0, 3):
        sys.exit(f"{' '.join(command)}\nended with {done.returncode}:\n{done.stderr}")
    return done.stdout


def rows(path):
    with open(path, newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def number(text):
    return float(text) if text not in ("", "NA", "NaN") else math.nan


class Gstat:
    """What compare.R left."""

    def __init__(self, folder):
        self.vgm, self.fits, self.estimates, self.scores = (rows(folder / f"{n}.csv") for n in ("vgm", "fits", "estimates", "scores"))
        self.facts = {r["key"]: r["value"] for r in rows(folder / "facts.csv")}

    def fact(self, key):
        return float(self.facts[key])

    def lags(self, dataset, case, azimuth=None):
        return [r for r in self.vgm if r["set"] == dataset and r["case"] == case and azimuth in (None, float(r["dir"]))]

    def cases(self, dataset):
        return list(dict.fromkeys(r["case"] for r in self.estimates if r["set"] == dataset))

    def places(self, dataset, case):
        return [(number(r["estimate"]), number(r["variance"])) for r in self.estimates if r["set"] == dataset and r["case"] == case]


class Ties:
    """Places at which the last of the nearest data and the next one are equally far: either may be taken."""

    def __init__(self, folder):
        self.folder = folder

    def at(self, dataset, near, places):
        """One truth a place; of the data themselves, each without itself, if there are no places."""
        data = [(float(r["x"]), float(r["y"])) for r in rows(self.folder / f"{dataset}_points.csv")]
        if places is None:
            return [self.tied(data[:i] + data[i + 1:], place, near) for i, place in enumerate(data)]
        file = rows(self.folder / f"{places}_places.csv")
        return [self.tied(data, (float(r["x"]), float(r["y"])), near) for r in file]

    @staticmethod
    def tied(data, place, near):
        squares = sorted((x - place[0]) ** 2 + (y - place[1]) ** 2 for x, y in data)
        return squares[near] - squares[near - 1] <= 1e-9 * squares[near]


class Mottle:
    """Runs the commands on the files that compare.R left."""

    def __init__(self, folder):
        self.folder = folder
        self.version = run(self.command("--version")).split()[-1]

    @staticmethod
    def command(*arguments):
        return ["java", "-jar", str(JAR), *map(str, arguments)]

    def points(self, dataset):
        return ["--points", self.folder / f"{dataset}_points.csv", "--value", "z", "--quiet"]

    def variogram(self, dataset, *options):
        return json.loads(run(self.command("variogram", *self.points(dataset), *options)))

    def estimate(self, dataset, model, *options, places=None):
        file = self.model(model)
        at = self.folder / f"{places or dataset}_places.csv"
        text = run(self.command("estimate", *self.points(dataset), "--at", at, "--model", file, *options))
        return [(number(r["estimate"]), number(r["variance"])) for r in csv.DictReader(text.splitlines())]

    def scores(self, dataset, model, *options):
        file = self.model(model)
        return json.loads(run(self.command("estimate", *self.points(dataset), "--model", file, "--leave-one-out", "--json", *options)))

    def model(self, model):
        nugget, sill, reach, azimuth, ratio = (*model, 0, 1)[:5] if len(model) == 3 else model
        structure = {"type": "spherical", "partial_sill": sill, "range": reach, "azimuth": azimuth, "ratio": ratio}
        file = self.folder / "model.json"
        file.write_text(json.dumps({"nugget": nugget, "structures": [structure]}))
        return file


def estimate_options(dataset, case, gstat):
    """The model and the options that mean the same as the call of compare.R."""
    nugget, sill, reach = MODEL[dataset]
    c = CHOICE[dataset]
    plain = (nugget, sill, reach)
    near = ["--neighbours", c["near"]]
    local = near if dataset == "random" else []
    return {
        "ordinary": (plain, []),
        "nearest": (plain, near),
        "nearest-radius": (plain, [*near, "--radius", c["radius"]]),
        "simple": (plain, ["--method", "simple-kriging", "--mean", gstat.facts[f"{dataset}.mean"]]),
        "block": (plain, ["--block", f"{c['block']}x{c['block']}", *local]),
        "measurement": ((0, sill, reach), ["--measurement-variance", nugget]),
        "anisotropic": ((*plain, 30, 0.5), []),
        "plane": (plain, ["--method", "universal-kriging", "--drift", "x,y", *local]),
        "idw2": (plain, ["--method", "inverse-distance", "--power", 2]),
        "idw2-nearest": (plain, ["--method", "inverse-distance", "--power", 2, *near]),
    }[case]


def relative(ours, theirs, floor):
    if math.isnan(ours) and math.isnan(theirs):
        return 0.0
    difference = abs(ours - theirs) / max(abs(theirs), floor)
    return math.inf if math.isnan(difference) else difference


def show(x):
    return "–" if math.isnan(x) else f"{x:.10g}"


def diff(x):
    return "0" if x == 0 else f"{x:.1e}"


class Page:
    """The page, and whether every number agrees."""

    def __init__(self, gstat, mottle, tie):
        self.gstat, self.mottle, self.tie = gstat, mottle, tie
        self.lines, self.failures, self.checks = [], [], 0
        self.excess = []
        self.largest = {}

    def check(self, kind, what, difference):
        self.checks += 1
        self.largest[kind] = max(self.largest.get(kind, (-1, "")), (difference, what))
        if not difference <= TOLERANCE[kind]:
            self.failures.append(f"{what}: {difference:.3g} is above {TOLERANCE[kind]:g}")
        return difference

    def add(self, *lines):
        self.lines += lines

    def table(self, *header):
        self.add("", "| " + " | ".join(header) + " |", "|" + "---|" * len(header))

    def row(self, *cells):
        self.add("| " + " | ".join(map(str, cells)) + " |")

    def write(self):
        body = []
        for dataset in TITLES:
            if dataset not in SCALE:
                self.add("", f"## {TITLES[dataset]}")
                self.variograms(dataset)
                self.fits(dataset)
                self.kriging(dataset)
                self.leave_one_out(dataset)
        self.scaled()
        body, self.lines = self.lines, []
        ties = self.ties()
        self.lines = []
        self.head()
        self.conventions(ties)
        return "\n".join(self.lines + body) + "\n"

    def variograms(self, dataset):
        cutoff, width = CHOICE[dataset]["lags"]
        chosen = ["--cutoff", cutoff, "--lag", width]
        cases = [("default", "default", None, []), ("chosen", f"cutoff {cutoff}, lag {width}", None, chosen),
                 ("cressie-hawkins", f"Cressie-Hawkins, {cutoff}/{width}", None, [*chosen, "--estimator", "cressie-hawkins"])]
        cases += [("directional", f"azimuth {a} ± 22.5, {cutoff}/{2 * width}", a, ["--cutoff", cutoff, "--lag", 2 * width, "--azimuth", a]) for a in (0, 45, 90, 135)]
        self.table("variogram", "lags", "pairs, gstat", "pairs, Mottle", "lags with other pairs", "γ of lag 2, gstat", "γ of lag 2, Mottle", "largest rel. diff. of distance", "of γ")
        for case, title, azimuth, options in cases:
            theirs = self.gstat.lags(dataset, case, azimuth)
            ours = self.mottle.variogram(dataset, "--model", "spherical", *options)["lags"]
            what = f"{dataset}, lags {title}"
            if len(ours) != len(theirs):
                self.failures.append(f"{what}: {len(ours)} lags, gstat has {len(theirs)}")
                continue
            other = sum(int(t["np"]) != o["pairs"] for t, o in zip(theirs, ours))
            distance = max(relative(o["distance"], number(t["dist"]), 0) for t, o in zip(theirs, ours))
            gamma = max(relative(o["semivariance"], number(t["gamma"]), 0) for t, o in zip(theirs, ours))
            self.check("lags", what, max(distance, gamma))
            self.row(title, len(ours), sum(int(t["np"]) for t in theirs), sum(o["pairs"] for o in ours), other,
                     show(number(theirs[1]["gamma"])), show(ours[1]["semivariance"]), diff(distance), diff(gamma))

    def fits(self, dataset):
        self.table("fit to the default lags", "weights", "gstat: nugget, partial sill, a", "Mottle: nugget, partial sill, a", "SSE, gstat", "SSE, Mottle", "Mottle's over gstat's − 1", "")
        for fit in (f for f in self.gstat.fits if f["set"] == dataset):
            kappa = ["--kappa", 1.5] if fit["model"] == "Mat" else []
            ours = self.mottle.variogram(dataset, "--model", NAMES[fit["model"]], "--weights", WEIGHTS[fit["method"]], *kappa)
            structures = ours["model"]["structures"] if ours["model"] else []
            theirs = [number(fit[k]) for k in ("nugget", "psill", "range")]
            mine = [ours["model"]["nugget"], structures[0]["partial_sill"], structures[0]["range"]] if structures else [math.nan] * 3
            sse, least = number(fit["sse"]), ours["fit"].get("weighted_sse", math.nan)
            note = []
            if fit["singular"] == "TRUE":
                note.append("gstat: singular")
            if min(theirs) < 0:
                note.append("gstat: below 0")
            frozen = fit["method"] == "2"
            ratio = least / sse - 1 if sse > 0 else math.nan
            if frozen:
                note.append("other objective")
            elif min(theirs) >= 0:
                self.check("sse", f"{dataset}, fit {NAMES[fit['model']]} {WEIGHTS[fit['method']]}", max(0.0, ratio))
                self.excess.append(sse / least - 1)
                if ratio < -1e-3:
                    note.append("gstat stopped early")
            self.row(NAMES[fit["model"]], WEIGHTS[fit["method"]], ", ".join(f"{v:.6g}" for v in theirs), ", ".join(f"{v:.6g}" for v in mine),
                     f"{sse:.9g}", f"{least:.9g}", "" if frozen else f"{ratio:.1e}", "; ".join(note))

    def kriging(self, dataset):
        sd = math.sqrt(self.gstat.fact(f"{dataset}.variance"))
        nugget, sill, _ = MODEL[dataset]
        self.table("estimate", "places", "at place 1: gstat", "Mottle", "variance: gstat", "Mottle", "largest rel. diff. of estimate", "of variance", "empty in both", "ties, left out")
        for case in self.gstat.cases(dataset):
            model, options = estimate_options(dataset, case, self.gstat)
            theirs = self.gstat.places(dataset, case)
            ours = self.mottle.estimate(dataset, model, *options)
            tied = self.tie.at(dataset, CHOICE[dataset]["near"], dataset) if "--neighbours" in options else [False] * len(ours)
            clear = [(o, t) for o, t, either in zip(ours, theirs, tied) if not either]
            estimate = max(relative(o[0], t[0], 1e-3 * sd) for o, t in clear)
            variance = max(relative(o[1], t[1], 1e-3 * (nugget + sill)) for o, t in clear)
            kind = "block" if case == "block" else "point"
            self.check(kind, f"{dataset}, estimate {case}", max(estimate, variance))
            empty = sum(math.isnan(t[0]) for t in theirs)
            self.row(self.case_title(dataset, case), len(ours), show(theirs[0][0]), show(ours[0][0]), show(theirs[0][1]), show(ours[0][1]),
                     diff(estimate), diff(variance) if not case.startswith("idw") else "", empty or "", sum(tied) or "")

    @staticmethod
    def case_title(dataset, case):
        c = CHOICE[dataset]
        near = f"nearest {c['near']}"
        local = f", {near}" if dataset == "random" else ""
        return {
            "ordinary": "ordinary kriging", "nearest": f"ordinary, {near}", "nearest-radius": f"ordinary, {near} within {c['radius']} m",
            "simple": "simple, mean of the data", "block": f"ordinary, blocks {c['block']} × {c['block']} m{local}",
            "measurement": "ordinary, nugget as measurement variance", "anisotropic": "ordinary, azimuth 30, ratio 0.5",
            "plane": f"universal, drift x,y{local}", "idw2": "inverse distance squared", "idw2-nearest": f"inverse distance squared, {near}",
        }[case]

    def leave_one_out(self, dataset):
        theirs = [s for s in self.gstat.scores if s["set"] == dataset]
        if not theirs:
            return
        self.table("leave-one-out", "RMSE: gstat", "Mottle", "MSDR: gstat", "Mottle", "largest rel. diff. of RMSE, MAE, MSDR", "abs. diff. of ME over RMSE", "")
        options = {"ordinary": [], "nearest": ["--neighbours", CHOICE[dataset]["near"]], "idw2": ["--method", "inverse-distance", "--power", 2]}
        for score in theirs:
            ours = self.mottle.scores(dataset, MODEL[dataset], *options[score["case"]])
            names = ["rmse", "mae"] + (["msdr"] if not math.isnan(number(score["msdr"])) else [])
            difference = max(relative(ours[n], number(score[n]), 0) for n in names)
            me = abs(ours["me"] - number(score["me"])) / number(score["rmse"])
            ties = sum(self.tie.at(dataset, CHOICE[dataset]["near"], None)) if score["case"] == "nearest" else 0
            if not ties:
                self.check("point", f"{dataset}, leave-one-out {score['case']}", max(difference, me))
            msdr = ours["msdr"] if "msdr" in names else math.nan
            self.row(self.case_title(dataset, score["case"]), show(number(score["rmse"])), show(ours["rmse"]), show(number(score["msdr"])), show(msdr), diff(difference), diff(me),
                     f"{ties} points with ties: not checked" if ties else "")

    def scaled(self):
        """The same comparisons in other units, of which only the largest differences are kept."""
        kept = []
        for dataset in SCALE:
            before, largest, self.lines, self.largest = self.lines, self.largest, [], {}
            self.variograms(dataset)
            self.fits(dataset)
            self.kriging(dataset)
            cells = [line.strip("| ").split(" | ") for line in self.lines]
            fit = next(c for c in cells if c[0] == "spherical")
            plane = next(c for c in cells if c[0].startswith("universal"))
            kept.append((TITLES[dataset], diff(self.largest["lags"][0]), fit[2], fit[3], fit[6], diff(self.largest["point"][0]),
                         self.largest["point"][1].split(", ")[1].replace("estimate ", ""), diff(self.largest["block"][0]), plane[2], plane[3]))
            mine, self.lines, self.largest = self.largest, before, largest
            for kind, worst in mine.items():
                self.largest[kind] = max(self.largest.get(kind, (-1, "")), worst)
        self.add("", "## Other units and a far origin", "",
                 "The lags, one fit and all estimates of the first table again. A change of units must change nothing but the units; a far origin takes",
                 "digits from a drift in x and y unless coordinates are centred first, as Mottle does: compare the last two columns over the rows.")
        self.table("data", "lags", "spherical fit, gstat", "Mottle", "Mottle's SSE over gstat's − 1", "estimates at points", "largest for", "blocks", "universal, x,y, at place 1: gstat", "Mottle")
        for row in kept:
            self.row(*row)

    def ties(self):
        theirs = self.gstat.places("ties", "nearest")
        ours = self.mottle.estimate("walker", MODEL["walker"], "--neighbours", CHOICE["walker"]["near"], places="ties")
        other = [relative(o[0], t[0], 1) for o, t in zip(ours, theirs)]
        tied = self.tie.at("walker", CHOICE["walker"]["near"], "ties")
        return sum(d > 1e-8 for d in other), len(other), max(other), sum(tied), sum(d > 1e-8 and not t for d, t in zip(other, tied))

    def head(self):
        java = subprocess.run(["java", "-version"], capture_output=True, text=True).stderr.splitlines()
        facts = self.gstat.facts
        worst = {k: v for k, v in self.largest.items()}
        self.add("# Numbers beside those of gstat", "",
                 "Written by `docs/numbers/compare.py`, not by hand: every figure below was measured in one run. To repeat it, from the root of the",
                 "repository, with R, its packages gstat and sp (Debian: `r-cran-gstat`, `r-cran-sp`), Python 3 and Java 17:", "",
                 "    mvn -q -DskipTests package && python3 docs/numbers/compare.py", "",
                 f"Measured with {facts['R']}, gstat {facts['gstat']}, sp {facts['sp']}; Mottle {self.mottle.version}, {java[0]}.", "",
                 f"{self.checks} comparisons were made, {len(self.failures)} of them above the tolerance of their kind:")
        self.table("kind", "largest relative difference", "where", "tolerance")
        titles = {"lags": "lags: mean distance and semivariance", "point": "kriging at points, inverse distance, leave-one-out",
                  "block": "kriging of blocks", "sse": "fits: sum of squares above gstat's"}
        for kind, title in titles.items():
            difference, where = worst[kind]
            self.row(title, diff(difference), where, f"{TOLERANCE[kind]:g}")
        for failure in self.failures:
            self.add("", f"**Above its tolerance:** {failure}.")
        self.add("", "The relative difference is |Mottle − gstat| / |gstat|; for estimates the divisor is at least a thousandth of the standard",
                 "deviation of the data and for variances at least a thousandth of the sill, so that rounding at a datum (variance 0) is not counted",
                 "as a difference. All kriging here has a fixed spherical model, so that it does not depend on the fits.")

    def conventions(self, ties):
        g = self.gstat.fact
        self.add("", "## Where the conventions meet and part", "",
                 "- **Default cutoff.** 0.33333 (not a third) of the diagonal of the bounding box, in fifteen lags, as in gstat. With a third to the last"
                 f" digit {g('random.lags.third'):.0f} of the 15 default lags of the random points hold other pairs than gstat's, with 0.33333"
                 f" {g('random.lags.33333'):.0f}; for Walker Lake the counts are {g('walker.lags.third'):.0f} and {g('walker.lags.33333'):.0f}.",
                 "- **Bins** are (lo, hi], distance the mean of the pairs, directions folded to 180° and the tolerance inclusive: the same in both.",
                 "- **Coincident pairs.** gstat counts them in the first lag: of four points on a line at 0, 0, 10 and 20 m, values 1, 4, 2, 7, its first"
                 f" lag of 10 m holds {g('coincident.pairs.first'):.0f} pairs, distance {g('coincident.distance.first'):g}, γ {g('coincident.gamma.first'):g}."
                 " Mottle refuses points that share a place until told to average them or to keep the first, so such pairs never enter.",
                 "- **Cressie-Hawkins** is gstat's form, ½ (mean √|Δz|)⁴ / (0.457 + 0.494/N), without the term in 1/N².",
                 "- **Cressie weights** (N/γ², gstat's fit.method 2) are frozen by gstat at the starting model; Mottle's are those of the fitted model, so"
                 " the two minimise different sums. For meuse from the start nugget 1, spherical 1, 900 gstat reports"
                 f" {g('cressie.reported'):.9g}, which is the sum with the weights of the start ({g('cressie.start'):.9g}); with the weights of its own result"
                 f" the sum is {g('cressie.itself'):.9g}. Rows with weights `cressie` below show both results and are not checked.",
                 "- **Fits.** gstat goes downhill from a starting model and may stop short (singular, or a local minimum); Mottle searches the whole range of"
                 " the parameters, within bounds that the lags can show, and never lets a nugget or partial sill below 0. Starts here: half the variance for nugget and"
                 " partial sill, range a half (spherical, circular, pentaspherical), quarter (Gaussian), sixth (exponential) or tenth (Matérn) of the longest lag."
                 " A negative nugget is set to 0 by gstat and the rest fitted anew."
                 f" Of {len(self.excess)} fits gstat's sum is above Mottle's by more than 0.1 % in {sum(e > 1e-3 for e in self.excess)}, at most by {100 * max(self.excess):.3g} %;"
                 f" Mottle's is nowhere above gstat's by more than {max(0.0, -min(self.excess)):.1e} of it.",
                 "- **Matérn** is gstat's `Mat`; the range of its `Ste` is 2√κ times as long.",
                 "- **Measurement variance** is gstat's `Err`: on the diagonal of the data, not in the target.",
                 "- **Blocks** have gstat's 4 × 4 Gauss points; the nugget averages out.",
                 "- **A datum.** The variance is 0 to rounding in gstat and may be below 0; Mottle sets it to 0.",
                 f"- **Equally near neighbours.** Mottle takes the earlier row, gstat another. At {ties[3]} of {ties[1]} places on the lattice of Walker Lake"
                 f" the 16th and the 17th datum are equally far. Estimates there that differ by more than 1e-8: {ties[0]}, the largest difference {ties[2]:.2g} of"
                 f" the value; such estimates without a tie: {ties[4]}. Places with ties are left out of the differences below, and counted.")


if __name__ == "__main__":
    os.environ.setdefault("LC_ALL", "C.UTF-8")
    main()
