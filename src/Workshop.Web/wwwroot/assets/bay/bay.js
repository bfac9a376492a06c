// The bay screen beyond its plain forms: what is tapped goes through the queue of the device, with and without network.
import { queue } from "./queue.js";
import { measure } from "./measure.js";
import { showQueue } from "./panel.js";
import { keepForOffline } from "./offline.js";
import { bodyOf } from "./fields.js";
import { count, showCounts } from "./counts.js";

// Longer than any page is kept without network: what was sent lies over an older page as long as there may be one.
const sentKeptFor = 15 * 60 * 60 * 1000;

document.querySelector(".faults")?.focus();
const place = document.querySelector("[data-bay]");
if (place) {
  begin(place.dataset);
}

async function begin({ person, name, now }) {
  const renderedAt = Number(now);
  await queue.forgetSent(await queue.now() - sentKeptFor);
  const refresh = keepForOffline(person);
  showQueue(renderedAt);
  document.querySelectorAll("form[data-post]").forEach(form => form.addEventListener("submit", event => sendForm(event, form)));
  document.querySelectorAll("[data-needed-by]").forEach(needWords);
  queue.addEventListener("change", () => showForms(renderedAt));
  queue.addEventListener("answered", refresh);
  document.querySelectorAll("[data-measure-data]").forEach(data => measure(JSON.parse(data.textContent), renderedAt));
  await showForms(renderedAt);
  queue.start({ id: person, name });
}

// A form says in data-post where its JSON goes; what stands in it says fields.js.
async function sendForm(event, form) {
  event.preventDefault();
  const body = bodyOf(form, event.submitter);
  if (form.dataset.at) {
    body[form.dataset.at] = new Date(await queue.now()).toISOString();
  }
  await queue.add({
    url: form.dataset.post, body, label: form.dataset.count ? count(form, body) : form.dataset.label, subject: form.dataset.subject,
  });
  nextInTurn(form.closest("[data-in-turn]"));
}

// Where one thing is done after the other, what is done closes and the next opens; the page that the service makes anew does the same.
function nextInTurn(done) {
  if (!done) {
    return;
  }
  const all = [...document.querySelectorAll("[data-in-turn]")];
  const open = all.slice(all.indexOf(done) + 1).concat(all.slice(0, all.indexOf(done))).find(one => !one.querySelector(".queued"));
  done.open = false;
  if (open) {
    open.open = true;
    open.scrollIntoView({ block: "nearest" });
  }
}

// A text that a choice of its form asks for is required once that is taken, so that nothing is queued that would be refused.
function needWords(text) {
  const show = () => {
    text.required = [...text.form.querySelectorAll("input[type=radio]:checked")].some(c => c.value === text.dataset.neededBy);
  };
  text.form.addEventListener("change", show);
  show();
}

// A form whose entry waits, or was answered after this page was made, gives way to a note that says so.
async function showForms(renderedAt) {
  const entries = await queue.list();
  showCounts(entries);
  for (const form of document.querySelectorAll("form[data-post]:not([data-count])")) {
    const own = entries.filter(e => e.subject === form.dataset.subject && (e.state !== "sent" || e.answeredAt >= renderedAt)).at(-1);
    const note = form.nextElementSibling?.matches(".queued") ? form.nextElementSibling : null;
    form.hidden = Boolean(own);
    if (!own) {
      note?.remove();
      continue;
    }
    const text = `${own.label}: ${words(own)}`;
    if (note) {
      note.textContent = text;
    } else {
      const p = document.createElement("p");
      p.className = "queued";
      p.textContent = text;
      form.after(p);
    }
    if (own.state === "sent" && queue.state === "idle" && entries.every(e => e.state !== "waiting")) {
      showAnew(own);
    }
  }
}

export function words(entry) {
  return entry.state === "waiting" ? (queue.sendingSeq === entry.seq ? "sending" : "waiting to be sent")
    : entry.state === "sent" ? "sent" : "refused, see above";
}

// What a form changed is shown by the page as the service makes it now; once for each entry, lest an old page comes again.
function showAnew(entry) {
  const done = sessionStorage.getItem("workshop-bay-shown");
  if (done !== String(entry.seq)) {
    sessionStorage.setItem("workshop-bay-shown", String(entry.seq));
    location.reload();
  }
}
