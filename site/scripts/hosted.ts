// What only a copy on a server has: it can be installed, and works without a network after the
// first visit. A folder on a disk needs neither.

export function hosted(root: string): void {
  if (!/^https?:$/.test(location.protocol)) return;
  if (document.documentElement.dataset.read !== undefined) return; // a book that is being written is not to be kept
  for (const [rel, file] of [["icon", "assets/icon.svg"], ["manifest", "app.webmanifest"]] as const) {
    const link = document.createElement("link");
    link.rel = rel;
    link.href = root + file;
    document.head.append(link);
  }
  // a browser that has no workers, or may not have one here, shows the book all the same
  navigator.serviceWorker?.register(root + "worker.js").catch(() => undefined);
}
