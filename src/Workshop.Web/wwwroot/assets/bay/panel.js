// What waits on this device, in words, on top of the screen; and what was refused, with both values, for a person to decide.
import { queue } from "./queue.js";

const states = {
  offline: "No network: what you enter waits on this device.",
  failing: "The service does not work at the moment: what you enter waits on this device.",
  busy: "The service is busy: what you enter waits on this device.",
  "signed-out": "Your sign-in has ended. Nothing is lost: sign in again to send what waits.",
};

export function showQueue() {
  const panel = document.querySelector("[data-queue]");
  const net = document.querySelector("[data-net]");
  const draw = async () => {
    const entries = (await queue.list()).filter(e => e.state !== "sent");
    say(net, entries);
    const conflicts = entries.filter(e => e.state === "conflict" && e.person === queue.person?.id);
    const waiting = entries.filter(e => e.state === "waiting" && !conflicts.some(c => c.subject === e.subject));
    panel.hidden = entries.length === 0;
    if (panel.contains(document.activeElement) && panel.dataset.drawn === signature(entries)) {
      return;
    }
    panel.dataset.drawn = signature(entries);
    panel.replaceChildren(
      ...conflicts.map(c => conflict(c, entries)),
      ...(waiting.length > 0 ? [list(waiting)] : []));
  };
  queue.addEventListener("change", draw);
  draw();
}

const signature = entries => entries.map(e => `${e.seq}${e.state}${queue.sendingSeq === e.seq}`).join();

function say(net, entries) {
  const waiting = entries.filter(e => e.state === "waiting").length;
  const count = waiting === 0 ? "" : waiting === 1 ? "1 entry waits." : `${waiting} entries wait.`;
  const text = states[queue.state] ?? (queue.state === "sending" ? "Sending." : navigator.onLine ? "" : states.offline);
  const line = [text, count].filter(Boolean).join(" ") || "Everything is sent.";
  if (net.dataset.said === line) {
    return;
  }
  net.dataset.said = line;
  net.replaceChildren(line);
  if (queue.state === "signed-out") {
    const link = element("a", "Sign in again");
    link.href = `/sign-in?returnTo=${encodeURIComponent(location.pathname + location.search)}`;
    net.append(" ", link);
  }
}

function list(waiting) {
  const box = element("div");
  const items = waiting.map(e => {
    const state = e.person !== queue.person?.id ? `waits until ${e.name} signs in here` : queue.sendingSeq === e.seq ? "sending" : "waiting";
    return element("li", `${e.label}: ${state}`);
  });
  const ul = element("ul");
  ul.append(...items);
  box.append(ul);
  return box;
}

function conflict(entry, entries) {
  const box = element("div");
  box.setAttribute("role", "alert");
  const matter = entries.filter(e => e.subject === entry.subject);
  const ours = matter.at(-1);
  const standing = entry.refused.standing?.[0];
  box.append(element("strong", standing ? `${entry.label.split(":")[0]}: somebody else has read it` : `${entry.label}: not written`));
  if (standing) {
    box.append(facts([
      ["Stands", `${standing.reading}, by ${standing.measuredBy}, ${standing.measuredAt}`],
      ["Entered here", `${ours.shown ?? ours.label}, by ${ours.name}`],
    ]));
  } else {
    box.append(element("p", entry.refused.detail ?? `The service refused it (${entry.refused.status}).`));
  }
  box.append(standing ? choice(entry, standing) : refusal(entry));
  return box;
}

function choice(entry, standing) {
  const form = element("form");
  form.className = "taps";
  const theirs = button("Let it stand", () => queue.letStand(entry));
  const ours = button("Write mine as a further reading", () => {
    queue.sendOurs(entry, body => {
      body.readings.forEach(r => { r.attempt = standing.attempt + 1; });
      body.reason = `Read by two: ${standing.reading} by ${standing.measuredBy} stood; measured again`;
      return body;
    });
  });
  theirs.className = "quiet";
  form.append(theirs, ours);
  return form;
}

function refusal(entry) {
  const form = element("form");
  form.className = "taps";
  const again = button("Send it again", () => queue.sendOurs(entry, body => body));
  const drop = button("Set it aside", () => queue.letStand(entry));
  drop.className = "quiet";
  form.append(drop, again);
  return form;
}

function facts(rows) {
  const dl = element("dl");
  dl.className = "both";
  rows.forEach(([name, text]) => dl.append(element("dt", name), element("dd", text)));
  return dl;
}

function button(text, then) {
  const b = element("button", text);
  b.type = "button";
  b.addEventListener("click", then);
  return b;
}

function element(name, text) {
  const e = document.createElement(name);
  if (text) {
    e.textContent = text;
  }
  return e;
}
