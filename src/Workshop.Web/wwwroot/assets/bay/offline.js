// Has the worker keep this screen and its other steps, so that a reload works without network.
export function keepForOffline(person) {
  if (!navigator.serviceWorker) {
    return () => {};
  }
  let asked = 0;
  const keep = async () => {
    const registration = await navigator.serviceWorker.ready;
    const steps = [...document.querySelectorAll("a[data-keep]")].map(a => a.href);
    registration.active?.postMessage({ keep: [location.href.split("#")[0], ...steps], person });
  };
  navigator.serviceWorker.register("/bay-worker.js").then(keep, () => {});

  // After answers the kept screen is made anew, once they pause.
  return () => {
    clearTimeout(asked);
    asked = setTimeout(keep, 1500);
  };
}
