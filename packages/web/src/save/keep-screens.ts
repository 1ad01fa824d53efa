/** Has the built screens kept by the browser, so that a reload opens them while the server is away; see public/service-worker.js. */
export function keepScreens(): void {
  // Over the network there is none without a certificate; then a page that is open stays of use, and a reload waits.
  if (!('serviceWorker' in navigator)) return;
  navigator.serviceWorker.register('/service-worker.js').catch(() => undefined);
}
