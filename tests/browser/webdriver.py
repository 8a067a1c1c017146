"""A browser without a window, driven over the W3C WebDriver protocol by nothing but Python's own library."""

import base64
import json
import os
import pathlib
import re
import shutil
import subprocess
import tempfile
import urllib.request

CHROMIUM = ["--headless=new", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
            "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage", "--hide-scrollbars", "--force-device-scale-factor=1"]


def missing():
    """What has to be installed before a Browser can be had; empty if nothing."""
    return [name for name in ("chromium", "chromedriver", "pdftotext", "pdfinfo") if not shutil.which(name)]


class Browser:
    def __enter__(self):
        self.folder = tempfile.TemporaryDirectory()
        self.driver = subprocess.Popen([shutil.which("chromedriver"), "--port=0"], stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                                       text=True, env={**os.environ, "HOME": self.folder.name})
        port = None
        for line in self.driver.stdout:
            found = re.search(r"started successfully on port (\d+)", line)
            if found:
                port = found.group(1)
                break
        if port is None:
            raise RuntimeError("chromedriver did not start")
        self.root = f"http://127.0.0.1:{port}/session"
        options = {"binary": shutil.which("chromium"), "args": [*CHROMIUM, f"--user-data-dir={self.folder.name}/profile"]}
        capabilities = {"browserName": "chrome", "goog:chromeOptions": options, "goog:loggingPrefs": {"browser": "ALL", "performance": "ALL"}}
        session = self.call("", {"capabilities": {"alwaysMatch": capabilities}})
        self.root += "/" + session["sessionId"]
        self.call("/url", {"url": "about:blank"})     # instead of the browser's own first page
        return self

    def __exit__(self, *_):
        try:
            self.call("", method="DELETE")
        finally:
            self.driver.terminate()
            self.driver.wait(30)
            self.driver.stdout.close()
            self.folder.cleanup()

    def call(self, path, body=None, method="POST"):
        data = None if method != "POST" else json.dumps(body or {}).encode()
        request = urllib.request.Request(self.root + path, data, {"Content-Type": "application/json"}, method=method)
        opener = urllib.request.build_opener(urllib.request.ProxyHandler({}))
        try:
            with opener.open(request, timeout=120) as answer:
                return json.load(answer)["value"]
        except urllib.error.HTTPError as problem:
            raise RuntimeError(f"{path}: {problem.read().decode('utf-8', 'replace')[:600]}") from None

    def open(self, file):
        """Opens a page, and forgets what the browser said before."""
        self.log("browser"), self.log("performance")
        self.call("/url", {"url": pathlib.Path(file).resolve().as_uri()})

    def log(self, kind):
        return self.call("/se/log", {"type": kind})

    def requests(self):
        """Every address that was asked for since the page was opened, save for data that stands in the page."""
        asked = []
        for entry in self.log("performance"):
            message = json.loads(entry["message"])["message"]
            if message["method"] == "Network.requestWillBeSent":
                asked.append(message["params"]["request"]["url"])
        return [each for each in asked if not each.startswith("data:")]

    def faults(self, file):
        """What an opened page did beside being opened: what it fetched, what was said on the console."""
        asked, said = self.requests(), self.log("browser")
        own = pathlib.Path(file).resolve().as_uri()
        return ([f"fetched {asked}"] if asked != [own] else []) + [f"said on the console: {each['message'][:200]}" for each in said[:1]]

    def run(self, script, *arguments):
        return self.call("/execute/sync", {"script": script, "args": list(arguments)})

    def resize(self, width, height):
        self.call("/goog/cdp/execute", {"cmd": "Emulation.setDeviceMetricsOverride", "params": {
            "width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 500}})

    def picture(self, file):
        self.call("/goog/cdp/execute", {"cmd": "Page.enable", "params": {}})
        shot = self.call("/goog/cdp/execute", {"cmd": "Page.captureScreenshot", "params": {"captureBeyondViewport": True}})
        pathlib.Path(file).write_bytes(base64.b64decode(shot["data"]))

    def printed(self, width, height):
        """A PDF on paper of so many centimetres, with the margins that the page asks for itself."""
        done = self.call("/goog/cdp/execute", {"cmd": "Page.printToPDF", "params": {
            "paperWidth": width / 2.54, "paperHeight": height / 2.54, "displayHeaderFooter": False}})
        return base64.b64decode(done["data"])
