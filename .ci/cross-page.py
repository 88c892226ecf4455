#!/usr/bin/python3
"""Opens report.html in headless Chromium, by the DevTools protocol over a pipe: no network, no
console error, every layer and a patch by mouse and by key, on a desk and on a phone, and on paper.

usage: cross-page.py REPORT.HTML FOLDER_FOR_PICTURES
"""
import base64
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
import time

LONGEST_OPENING_S = 2.0


class Browser:
    """Chromium at the other end of two pipes, messages ended by NUL."""

    def __init__(self):
        self.profile = tempfile.mkdtemp()
        to_read, self.to = os.pipe()
        self.back, from_write = os.pipe()

        def pipes():
            # out of the way first: one of the ends may be 3 or 4 itself
            a, b = os.dup(to_read), os.dup(from_write)
            os.dup2(a, 3)
            os.dup2(b, 4)

        self.process = subprocess.Popen(
            ["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--remote-debugging-pipe",
             "--host-resolver-rules=MAP * ~NOTFOUND", "--user-data-dir=" + self.profile, "about:blank"],
            preexec_fn=pipes, close_fds=False,
            stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(to_read)
        os.close(from_write)
        self.number = 0
        self.rest = b""
        self.events = []
        self.session = None

    def message(self):
        while b"\0" not in self.rest:
            part = os.read(self.back, 1 << 20)
            if not part:
                raise SystemExit("chromium ended early")
            self.rest += part
        one, self.rest = self.rest.split(b"\0", 1)
        return json.loads(one)

    def call(self, method, **params):
        self.number += 1
        message = {"id": self.number, "method": method, "params": params}
        if self.session:
            message["sessionId"] = self.session
        self.write(json.dumps(message).encode() + b"\0")
        while True:
            answer = self.message()
            if answer.get("id") == self.number:
                if "error" in answer:
                    raise SystemExit("%s: %s" % (method, answer["error"]))
                return answer["result"]
            self.events.append(answer)

    def write(self, data):
        while data:
            data = data[os.write(self.to, data):]

    def open_tab(self):
        target = self.call("Target.createTarget", url="about:blank")["targetId"]
        self.session = self.call("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        for domain in ("Page", "Runtime", "Log", "Network"):
            self.call(domain + ".enable")

    def until(self, event):
        while not any(e.get("method") == event for e in self.events):
            self.events.append(self.message())

    def value(self, script):
        answer = self.call("Runtime.evaluate", expression=script, returnByValue=True, awaitPromise=True)
        if "exceptionDetails" in answer:
            raise SystemExit("%s: %s" % (script, answer["exceptionDetails"]))
        return answer["result"].get("value")

    def picture(self, file, whole=False):
        shot = self.call("Page.captureScreenshot", format="png", captureBeyondViewport=whole)
        with open(file, "wb") as out:
            out.write(base64.b64decode(shot["data"]))

    def close(self):
        self.process.terminate()
        self.process.wait()
        shutil.rmtree(self.profile, ignore_errors=True)


checked = 0


def require(what, holds, seen=""):
    global checked
    checked += 1
    if not holds:
        raise SystemExit("report.html: %s%s" % (what, ": %s" % (seen,) if seen != "" else ""))


def complaints(browser):
    """What the console said, and what was asked of a network."""
    for e in browser.events:
        method, params = e.get("method"), e.get("params", {})
        if method == "Runtime.exceptionThrown":
            yield params["exceptionDetails"]["text"]
        elif method == "Runtime.consoleAPICalled" and params["type"] in ("error", "warning", "assert"):
            yield str(params["args"])
        elif method == "Log.entryAdded" and params["entry"]["level"] in ("error", "warning"):
            yield params["entry"]["text"] + " " + params["entry"].get("url", "")
        elif method == "Network.requestWillBeSent":
            url = params["request"]["url"]
            if not url.startswith(("file:", "data:")):
                yield "asked for " + url


def click(browser, x, y):
    for kind in ("mousePressed", "mouseReleased"):
        browser.call("Input.dispatchMouseEvent", type=kind, x=x, y=y, button="left", clickCount=1)


def centre(browser, selector, n=0):
    return browser.value(
        "(()=>{const e=document.querySelectorAll('%s')[%d];e.scrollIntoView({block:'center'});"
        "const r=e.getBoundingClientRect();return [r.left+r.width/2,r.top+r.height/2]})()" % (selector, n))


def key(browser, name, code):
    for kind in ("keyDown", "keyUp"):
        browser.call("Input.dispatchKeyEvent", type=kind, key=name, code=name, windowsVirtualKeyCode=code,
                     text="\r" if kind == "keyDown" and name == "Enter" else "")


def visit(page, folder, name, width, height, phone):
    browser = Browser()
    try:
        browser.open_tab()
        browser.call("Network.emulateNetworkConditions", offline=True, latency=0,
                     downloadThroughput=-1, uploadThroughput=-1)
        browser.call("Emulation.setDeviceMetricsOverride", width=width, height=height,
                     deviceScaleFactor=1, mobile=phone)
        browser.events.clear()
        begun = time.time()
        browser.call("Page.navigate", url="file://" + os.path.abspath(page))
        browser.until("Page.loadEventFired")
        ready = browser.value("document.documentElement.dataset.map")
        took = time.time() - begun
        require("the map is drawn at once", ready == "ready", ready)
        require("it opens in %.0f s" % LONGEST_OPENING_S, took < LONGEST_OPENING_S, "%.2f s" % took)
        wide = browser.value("document.documentElement.scrollWidth")
        require("nothing stands out of the page on %s" % name, wide <= width, wide)
        time.sleep(0.4)
        browser.picture(os.path.join(folder, name + "-top.png"))

        pane = ".leaflet-ground-pane"
        for ground, what in (("mean", "img.cells"), ("sd", "img.cells"), ("classes", "path")):
            click(browser, *centre(browser, "input[value=%s]" % ground))
            shown = browser.value("document.querySelectorAll('%s %s').length" % (pane, what))
            require("%s is drawn" % ground, shown > 0, shown)
            if ground == "sd":
                time.sleep(0.3)
                browser.picture(os.path.join(folder, name + "-sd.png"))
        click(browser, *centre(browser, "input[value=none]"))
        require("no ground is drawn", browser.value("document.querySelectorAll('%s path').length" % pane) == 0)
        click(browser, *centre(browser, "input[value=classes]"))
        data = json.loads(browser.value("document.getElementById('map-data').textContent"))
        last = {g["id"]: g for g in data["greens"]}.values()
        for mark, selector in (("stations", "path.station"), ("next", ".next-mark"), ("stops", ".stop-mark"),
                               ("patches", "path.patch")):
            wanted = sum(len(g.get(mark, [])) for g in last)
            box = "input[value=%s]" % mark
            count = "document.querySelectorAll('%s').length" % selector
            if not browser.value("document.querySelector('%s').checked" % box):
                click(browser, *centre(browser, box))
            require("all %s are drawn" % mark, browser.value(count) == wanted, browser.value(count))
            click(browser, *centre(browser, box))
            require("%s can be taken off" % mark, browser.value(count) == 0)
        click(browser, *centre(browser, "input[value=patches]"))

        require("the demo has a patch", any(g.get("patches") for g in last))
        click(browser, *centre(browser, ".patch-buttons button"))
        time.sleep(0.5)
        said = browser.value("document.querySelector('.leaflet-popup-content').textContent")
        require("a patch says its figures", "Chance that it is there" in said and "Area" in said, said)
        browser.value("document.getElementById('course-map').scrollIntoView({block:'center'})")
        browser.picture(os.path.join(folder, name + "-patch.png"))
        # a click on the outlined ground itself, and a key on it
        key(browser, "Escape", 27)
        time.sleep(0.4)
        require("escape closes it", browser.value("document.querySelectorAll('.leaflet-popup').length") == 0)
        at = browser.value(
            "(()=>{const p=[...document.querySelectorAll('path.patch')].find(e=>{const r=e.getBoundingClientRect();"
            "return r.width>8});"
            "if(!p)return null;const r=p.getBoundingClientRect();"
            "for(let i=1;i<20;i++)for(let j=1;j<20;j++){const x=r.left+r.width*i/20,y=r.top+r.height*j/20;"
            "if(document.elementFromPoint(x,y)===p)return [x,y]}return null})()")
        require("a patch lies in view", at is not None)
        click(browser, *at)
        time.sleep(0.4)
        require("a click opens a patch", browser.value("document.querySelectorAll('.leaflet-popup').length") == 1)
        key(browser, "Escape", 27)
        time.sleep(0.4)
        browser.value("document.querySelector('path.patch').focus()")
        key(browser, "Enter", 13)
        time.sleep(0.4)
        require("a key opens a patch", browser.value("document.querySelectorAll('.leaflet-popup').length") == 1)
        unnamed = browser.value(
            "[...document.querySelectorAll('input,select,button,path[tabindex],img,[role=img]')].filter(e=>"
            "!(e.labels&&e.labels.length)&&!e.textContent.trim()&&!e.getAttribute('aria-label')&&"
            "!e.hasAttribute('alt')).length")
        require("everything to read or press has a name", unnamed == 0, unnamed)
        browser.value("document.getElementById('sheet-1').scrollIntoView()")
        time.sleep(0.2)
        browser.picture(os.path.join(folder, name + "-sheet.png"))
        browser.value("document.getElementById('appendix').scrollIntoView()")
        time.sleep(0.2)
        browser.picture(os.path.join(folder, name + "-appendix.png"))
        wrong = list(complaints(browser))
        require("the console is silent and nothing is fetched", not wrong, wrong)
        if not phone:
            for paper, w, h in (("a4", 8.27, 11.69), ("letter", 8.5, 11)):
                printed(browser, folder, paper, w, h, len(data["greens"]))
        print("%s: opened in %.2f s" % (name, took))
    finally:
        browser.close()


def printed(browser, folder, paper, w, h, sheets):
    """The cover, one page a sheet, the appendix: told by the headings that each page holds."""
    pdf = os.path.join(folder, "report-%s.pdf" % paper)
    answer = browser.call("Page.printToPDF", paperWidth=w, paperHeight=h, preferCSSPageSize=False,
                          printBackground=True)
    with open(pdf, "wb") as out:
        out.write(base64.b64decode(answer["data"]))
    pages = subprocess.run(["pdftotext", "-layout", pdf, "-"], check=True, capture_output=True,
                           text=True).stdout.split("\f")[:-1]
    heads = [len(re.findall(r"What was asked, and of what", p)) for p in pages]
    ends = [len(re.findall(r"Limits, and who decides", p)) for p in pages]
    first = [i for i, p in enumerate(pages) if re.search(r"^\s*Appendix", p, re.M)]
    require("%s: an appendix" % paper, len(first) == 1, first)
    cover = heads.index(1) if 1 in heads else 0
    require("%s: the cover, then one page a sheet, then the appendix" % paper,
            cover >= 1 and heads[cover:cover + sheets] == [1] * sheets and ends == heads
            and sum(heads) == sheets and first[0] == cover + sheets, (heads, ends, first))
    print("%s: %d pages" % (paper, len(pages)))


def main():
    page, folder = sys.argv[1:]
    os.makedirs(folder, exist_ok=True)
    visit(page, folder, "desk", 1280, 900, False)
    visit(page, folder, "phone", 390, 844, True)
    print("report.html: %d checks hold" % checked)


main()
