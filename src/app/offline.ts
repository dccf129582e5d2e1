/**
 * Keeps the built editor in the browser, so that it opens without a network after the first time. A newer build waits until
 * no tab uses the old one; `onUpdate` is called when one waits, so that the person knows why.
 */
export const registerOffline = (onUpdate: () => void): void => {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  navigator.serviceWorker
    .register('./sw.js')
    .then((registration) => {
      const watch = (worker: ServiceWorker | null): void =>
        worker?.addEventListener('statechange', () => {
          if (worker.state === 'installed' && navigator.serviceWorker.controller) onUpdate();
        });
      if (registration.waiting && navigator.serviceWorker.controller) onUpdate();
      registration.addEventListener('updatefound', () => watch(registration.installing));
    })
    .catch((cause: unknown) => {
      console.warn('The editor could not be kept for use offline.', cause);
    });
};
