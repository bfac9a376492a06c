"""Enters readings of the engine that lies open, one after the other, and says how long each answer took. Called by deploy/bench-bay.

entries.py PORT PASSWORD
"""
import datetime
import http.client
import json
import sys
import time
import uuid

PORT, PASSWORD = int(sys.argv[1]), sys.argv[2]
ROUNDS, WARM = 26, 1
connection = http.client.HTTPConnection("127.0.0.1", PORT, timeout=60)
token = None


def ask(method, path, body=None):
    """The answer, and how long it took in ms."""
    headers = {"content-type": "application/json", "idempotency-key": str(uuid.uuid4())}
    if token:
        headers["authorization"] = f"Bearer {token}"
    begun = time.perf_counter()
    connection.request(method, "/api/v1" + path, json.dumps(body) if body is not None else None, headers)
    answer = connection.getresponse()
    text = answer.read()
    took = 1000 * (time.perf_counter() - begun)
    if answer.status >= 400:
        sys.exit(f"{method} {path}: {answer.status} {text.decode()}")
    return json.loads(text), took


def row(name, times):
    times = sorted(times)
    print("| {}, {} entries: median, 95th of 100 and slowest | {:.1f} ms, {:.1f} ms, {:.1f} ms |".format(
        name, len(times), times[len(times) // 2], times[len(times) * 95 // 100], times[-1]), flush=True)


token = ask("POST", "/session", {"userName": "tilda", "password": PASSWORD})[0]["token"]
bay = next(p for p in ask("GET", "/bays")[0]["places"] if p["kind"] == "bay" and p["stands"])
number = bay["stands"]["jobCardNumber"]
card = ask("GET", f"/job-cards/{number}/readings")[0]
lobes = [l for p in card["positions"] for l in p["lobes"]]
feelers = next(i for i in ask("GET", "/instruments")[0]["rows"] if i["kind"] == "feelerSet" and i["mayBeUsed"] and i["unit"] == "mm")

one, whole = [], []
for turn in range(ROUNDS):
    readings = []
    for place, lobe in enumerate(lobes):
        # A step around the aim, another each time, so that no answer is that of the time before.
        go = round(lobe["limits"]["setToMm"] + 0.01 * ((turn + place) % 3 - 1), 2)
        reading = {"valve": lobe["valve"], "lobe": lobe["lobe"], "stage": "asFound", "kind": "goAndNoGo", "goMm": go, "noGoMm": round(go + 0.01, 2)}
        body = {
            "instrumentId": feelers["id"], "headTemperatureC": 21, "temperatureMethod": card["cold"]["method"],
            "measuredAt": datetime.datetime.now(datetime.timezone.utc).strftime("%Y-%m-%dT%H:%M:%SZ"),
        }
        readings.append(reading)
        if turn > 0:
            body["reason"] = "Measured again, another hand"
        if turn < ROUNDS - 2:
            one.append(ask("POST", f"/job-cards/{number}/readings", {**body, "readings": [reading]})[1])
    if turn >= ROUNDS - 2:
        whole.append(ask("POST", f"/job-cards/{number}/readings", {**body, "readings": readings})[1])

row("one valve entered, answered with verdict, forecast and check", one[WARM * len(lobes):])
row(f"all {len(lobes)} valves in one send", whole)
