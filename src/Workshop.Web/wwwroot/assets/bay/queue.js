// Sends what was entered, strictly in order. An entry is on disk before anything is sent, under a key that it keeps however often
// it is sent, and leaves only on an answer: done, or refused, which a person decides about. Nothing is ever overwritten unseen.
import { store } from "./store.js";

const longestPause = 20_000;
const longestAnswer = 20_000;

// 128 random bits; randomUUID is not there without https.
function newKey() {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), b => b.toString(16).padStart(2, "0")).join("");
}

class Queue extends EventTarget {
  person = null;
  state = "idle";
  #pause = 1000;
  #timer = 0;
  #sending = false;
  #again = false;

  start(person) {
    this.person = person;
    addEventListener("online", () => this.send());
    addEventListener("offline", () => this.#say("offline"));
    document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && this.send());
    this.send();
  }

  // { url, body, label, subject, shown }: what is posted where, how it is called, what it is about, and what the device said to it.
  async add(entry) {
    const kept = await store.add({
      state: "waiting", key: newKey(), person: this.person.id, name: this.person.name, at: await this.now(), ...entry,
    });
    this.#changed();
    this.send();
    return kept;
  }

  list() {
    return store.all();
  }

  // The service's clock as far as it is known, never ahead of it.
  async now() {
    return Date.now() + (await store.setting("behind") ?? 0);
  }

  async heard(response) {
    const said = Number(response.headers.get("X-Workshop-Time"));
    if (said) {
      await store.keep("behind", said - Date.now());
    }
    return said || Date.now();
  }

  async send() {
    if (this.#sending) {
      this.#again = true;
      return;
    }
    this.#sending = true;
    clearTimeout(this.#timer);
    try {
      do {
        this.#again = false;
        await alone(() => this.#sendAll());
      } while (this.#again);
    } finally {
      this.#sending = false;
    }
  }

  // A conflict ends by a person's word: theirs stands, or ours is sent as a further attempt with a reason.
  async letStand(entry) {
    const about = (await store.all()).filter(e => sameMatter(e, entry) && e.state !== "sent");
    await store.replace(about.map(e => e.seq));
    this.#changed();
    this.send();
  }

  async sendOurs(entry, change) {
    const about = (await store.all()).filter(e => sameMatter(e, entry) && e.state !== "sent");
    const last = about.at(-1) ?? entry;
    const { seq, refused, ...rest } = last;
    await store.replace(about.map(e => e.seq), { ...rest, state: "waiting", key: newKey(), body: change(structuredClone(last.body)) });
    this.#changed();
    this.send();
  }

  async forgetSent(before) {
    const old = (await store.all()).filter(e => e.state === "sent" && e.answeredAt < before);
    if (old.length > 0) {
      await store.replace(old.map(e => e.seq));
    }
  }

  async #sendAll() {
    for (;;) {
      const entries = await store.all();
      const held = new Set(entries.filter(e => e.state === "conflict").map(e => e.subject));

      // What somebody else entered waits until that person is signed in here again: it is sent in nobody else's name.
      const next = entries.find(e => e.state === "waiting" && e.person === this.person.id && !held.has(e.subject));
      if (!next) {
        this.#say("idle");
        return;
      }
      if (!await this.#sendOne(next)) {
        return;
      }
    }
  }

  // True where the entry is answered and the next one may go.
  async #sendOne(entry) {
    this.#say("sending", entry.seq);
    let response;
    try {
      response = await fetch(entry.url, {
        method: "POST",
        redirect: "manual",
        signal: AbortSignal.timeout(longestAnswer),
        headers: { "Content-Type": "application/json", "Idempotency-Key": entry.key, "X-Workshop-Request": "1" },
        body: JSON.stringify(entry.body),
      });
    } catch {
      return this.#later("offline");
    }

    const answer = await response.json().catch(() => null);
    if (response.ok && answer !== null) {
      this.#pause = 1000;
      const answeredAt = await this.heard(response);
      await store.put({ ...entry, state: "sent", answer, answeredAt });
      this.dispatchEvent(new CustomEvent("answered", { detail: { entry, answer } }));
      this.#changed();
      return true;
    }
    if (response.status === 401 || response.type === "opaqueredirect") {
      this.#say("signed-out");
      return false;
    }
    if (response.ok || response.status >= 500 || [408, 425, 429].includes(response.status) || answer?.code === "request-in-flight" || answer?.code === "busy") {
      return this.#later(response.status >= 500 ? "failing" : "busy");
    }

    await store.put({ ...entry, state: "conflict", refused: { status: response.status, ...answer } });
    this.dispatchEvent(new CustomEvent("refused", { detail: { entry, answer } }));
    this.#changed();
    return true;
  }

  #later(state) {
    this.#say(state);
    this.#timer = setTimeout(() => this.send(), this.#pause);
    this.#pause = Math.min(longestPause, this.#pause * 1.7);
    return false;
  }

  #say(state, seq) {
    this.state = state;
    this.sendingSeq = state === "sending" ? seq : null;
    this.#changed();
  }

  #changed() {
    this.dispatchEvent(new Event("change"));
  }
}

function sameMatter(one, other) {
  return one.seq === other.seq || (one.subject && one.subject === other.subject);
}

// Two windows of one device send in turn. Without https there are no locks; the keys then keep a double send from counting twice.
function alone(work) {
  return navigator.locks ? navigator.locks.request("workshop-bay-queue", work) : work();
}

export const queue = new Queue();
