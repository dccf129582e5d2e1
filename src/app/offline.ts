/** Keeps the built editor in the browser, so that it opens without a network after the first time. */
export const registerOffline = (): void => {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  navigator.serviceWorker.register('./sw.js').catch((cause: unknown) => {
    console.warn('The editor could not be kept for use offline.', cause);
  });
};
