"""Asks for the earliest slots one after the other, then books with 64 clients at once. Called by deploy/bench-slots.

crowd.py PORT ATTEMPTS PASSWORD
"""
import collections
import concurrent.futures
import http.client
import json
import sys
import threading
import time
import uuid

PORT, ATTEMPTS, PASSWORD = int(sys.argv[1]), int(sys.argv[2]), sys.argv[3]
ASKED, WARM, CLIENTS = 101, 20, 64
held = threading.local()


def ask(method, path, body=None, token=None):
    """One request on this client's own connection; the status, the answer, and how long it took in ms."""
    if not hasattr(held, "connection"):
        held.connection = http.client.HTTPConnection("127.0.0.1", PORT, timeout=300)
    headers = {"content-type": "application/json", "idempotency-key": str(uuid.uuid4())}
    if token:
        headers["authorization"] = f"Bearer {token}"
    begun = time.perf_counter()
    held.connection.request(method, "/api/v1" + path, json.dumps(body) if body is not None else None, headers)
    answer = held.connection.getresponse()
    text = answer.read()
    took = 1000 * (time.perf_counter() - begun)
    return answer.status, json.loads(text) if text else None, took


def must(answer):
    status, body, _ = answer
    if status >= 400:
        sys.exit(f"{status}: {body}")
    return body


token = must(ask("POST", "/session", {"userName": "greta", "password": PASSWORD}))["token"]
motorcycles = [m["id"] for m in must(ask("GET", "/motorcycles?take=50", token=token))["rows"]]
oil = [{"code": "engine-oil-and-filter", "likelihood": "certain"}]
check = oil + [{"code": "valve-clearance-check", "likelihood": "certain"}]

for name, items, explain in (("oil and filter", oil, False), ("valve clearance check", check, False), ("the same, why not earlier", check, True)):
    times = []
    for i in range(ASKED + WARM):
        answer = ask("POST", "/bookings/slots", {"motorcycleId": motorcycles[i % len(motorcycles)], "items": items, "explain": explain}, token)
        found = must(answer)
        times.append(answer[2])
    times = sorted(times[WARM:])
    print(f"| earliest 5 slots, {name}: median, 95th and slowest of {ASKED} | {times[ASKED // 2]:.1f} ms, {times[95]:.1f} ms, {times[-1]:.1f} ms |", flush=True)

# Hours that the crowd wants: those of slots that are free now, each wanted by many.
wanted = [s for m in motorcycles[:5] for s in must(ask("POST", "/bookings/slots", {
    "motorcycleId": m, "items": oil, "count": 20, "apartMinutes": 120}, token))["slots"]]


def book(i):
    slot = wanted[(i // CLIENTS) % len(wanted)]
    status, body, took = ask("POST", "/bookings", {
        "motorcycleId": motorcycles[i % len(motorcycles)], "items": oil, "bayId": slot["bayId"],
        "technicianId": slot["technicianId"], "startsAt": slot["startsAt"]}, token)
    return f"{status} {body.get('code', '')}".strip(), took


begun = time.perf_counter()
with concurrent.futures.ThreadPoolExecutor(CLIENTS) as crowd:
    done = list(crowd.map(book, range(ATTEMPTS)))
took = time.perf_counter() - begun
answers = collections.Counter(status for status, _ in done)
print(f"| {ATTEMPTS} attempts of {CLIENTS} clients at once | {', '.join(f'{n} times {status}' for status, n in sorted(answers.items()))} |")
print(f"| they took together; one of them, median | {took:.0f} s; {sorted(t for _, t in done)[len(done) // 2]:.0f} ms |")
