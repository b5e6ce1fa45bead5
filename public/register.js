// Registers the service worker and tells the app how that stands, in events on window:
//
//   eavewater-offline-ready    the whole app is now kept here and starts with no network
//   eavewater-offline-failed   it could not be kept; it works only with the network
//   eavewater-update-ready     a newer version is here, whole, and waits for consent
//
// An event may come before the app listens, so the last word also stands in window.eavewaterOffline:
// 'ready', 'failed' or 'waiting'. The app gives consent with the event eavewater-update-accepted.
//
// And whether the browser promised not to throw away what is kept: eavewater-persists, eavewater-may-go, and
// window.eavewaterPersists. The app asks for it with the event eavewater-persist-wanted.
(() => {
  const kept = (persists) => {
    window.eavewaterPersists = persists;
    window.dispatchEvent(new CustomEvent(persists ? 'eavewater-persists' : 'eavewater-may-go'));
  };
  if (navigator.storage?.persist) {
    navigator.storage.persisted().then(kept, () => {});
    window.addEventListener('eavewater-persist-wanted', () => navigator.storage.persist().then(kept, () => kept(false)), { once: true });
  }
})();

(() => {
  const EVENTS = { ready: 'eavewater-offline-ready', failed: 'eavewater-offline-failed', waiting: 'eavewater-update-ready' };

  function tell(state) {
    window.eavewaterOffline = state;
    window.dispatchEvent(new CustomEvent(EVENTS[state]));
  }

  // Follows a version that is being fetched to its end.
  function follow(worker, isFirst) {
    worker.addEventListener('statechange', () => {
      if (worker.state === 'installed' && !isFirst) tell('waiting');
      if (worker.state === 'activated' && isFirst) tell('ready');
      // An update that fails leaves the version in use as it was: nothing to tell.
      if (worker.state === 'redundant' && isFirst) tell('failed');
    });
  }

  async function register() {
    // A program that the page is unpacking just now is not unpacked twice.
    await window.eavewaterUnpacked;
    // Past the browser's own store, so that an update is seen as soon as it is there.
    const registration = await navigator.serviceWorker.register('service-worker.js', { updateViaCache: 'none' });
    const { installing, waiting, active } = registration;
    if (active) window.eavewaterOffline = 'ready';
    if (waiting && active) tell('waiting');
    const coming = installing ?? (active ? null : waiting);
    if (coming) follow(coming, !active);
    registration.addEventListener('updatefound', () => {
      if (registration.installing !== coming) follow(registration.installing, !registration.active);
    });

    window.addEventListener('eavewater-update-accepted', () => {
      // Another tab may have switched already; then there is nothing left to wait for.
      if (!registration.waiting) return window.location.reload();
      navigator.serviceWorker.addEventListener('controllerchange', () => window.location.reload(), { once: true });
      registration.waiting.postMessage('take over');
    });
  }

  if ('serviceWorker' in navigator) register().catch(() => tell('failed'));
  else tell('failed');
})();
