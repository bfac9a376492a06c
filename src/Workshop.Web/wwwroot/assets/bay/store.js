// What this device keeps: entries that are not sent yet, and a few settings. IndexedDB, since it survives a reload and a crash.
const name = "workshop-bay";
let opening = null;

function open() {
  opening ??= new Promise((done, failed) => {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore("entries", { keyPath: "seq", autoIncrement: true });
      request.result.createObjectStore("settings");
    };
    request.onsuccess = () => {
      request.result.onversionchange = () => request.result.close();
      done(request.result);
    };
    request.onerror = () => failed(request.error);
  });
  return opening;
}

// Runs work in one transaction and answers once it is on disk: what is acknowledged is kept.
async function within(stores, mode, work) {
  const db = await open();
  return new Promise((done, failed) => {
    const transaction = db.transaction(stores, mode, { durability: "strict" });
    let answer;
    transaction.oncomplete = () => done(answer);
    transaction.onabort = () => failed(transaction.error);
    work(transaction, value => { answer = value; });
  });
}

function ask(request, then) {
  request.onsuccess = () => then(request.result);
}

export const store = {
  all: () => within(["entries"], "readonly", (t, answer) => ask(t.objectStore("entries").getAll(), answer)),
  add: entry => within(["entries"], "readwrite", (t, answer) => ask(t.objectStore("entries").add(entry), seq => answer({ ...entry, seq }))),
  put: entry => within(["entries"], "readwrite", t => { t.objectStore("entries").put(entry); }),
  // Takes some out and adds one, or none, in one step.
  replace: (seqs, entry) => within(["entries"], "readwrite", t => {
    const entries = t.objectStore("entries");
    seqs.forEach(seq => entries.delete(seq));
    if (entry) {
      entries.add(entry);
    }
  }),
  setting: key => within(["settings"], "readonly", (t, answer) => ask(t.objectStore("settings").get(key), answer)),
  keep: (key, value) => within(["settings"], "readwrite", t => { t.objectStore("settings").put(value, key); }),
};
