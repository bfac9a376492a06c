// Keeps a part of a page up to date: whenever the service says that something changed, the part is fetched anew.
const part = document.querySelector("[data-live]");
if (part) {
  keepUpToDate(part);
}

function keepUpToDate(part) {
  const state = document.querySelector("[data-live-state]");
  const seen = encodeURIComponent(part.dataset.seen);
  const source = new EventSource(`${part.dataset.live}?seen=${seen}`);
  let looking = false;
  let again = false;
  let blind = false;

  source.addEventListener("look", () => {
    blind = false;
    look();
  });
  source.addEventListener("blind", () => {
    blind = true;
    say("Not live: the service cannot hear its database.");
  });
  source.addEventListener("open", () => say("Live."));
  source.addEventListener("error", () => {
    say("Not live: the service does not answer.");
    if (source.readyState === EventSource.CLOSED) {
      setTimeout(() => location.reload(), 30_000);
    }
  });

  // Minutes pass without anything changing.
  setInterval(look, 60_000);

  async function look() {
    if (looking) {
      again = true;
      return;
    }

    looking = true;
    do {
      again = false;
      await fetchPart();
    } while (again);
    looking = false;
  }

  async function fetchPart() {
    try {
      const answer = await fetch(part.dataset.part, { headers: { Accept: "text/html" } });
      if (answer.redirected) {
        location.reload();
        return;
      }

      if (answer.ok) {
        part.innerHTML = await answer.text();
        if (!blind && source.readyState === EventSource.OPEN) {
          say("Live.");
        }

        return;
      }
    } catch {
      // Said below; the next news or the next minute tries again.
    }

    say("Not live: the service does not answer.");
  }

  function say(text) {
    if (state && state.textContent !== text) {
      state.textContent = text;
    }
  }
}
