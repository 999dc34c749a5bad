// hub.html: the one page whose storage serves all others, because a browser may keep one store
// per file when the book is opened from a folder.
import { isAsk, type Told } from "./hubtalk";

addEventListener("message", (event) => {
  // from a folder every origin is "null"; from a server only pages of the same server may ask
  if (location.protocol !== "file:" && event.origin !== location.origin) return;
  if (!isAsk(event.data) || event.source !== parent) return;
  const { id, key, value } = event.data;
  const told: Told = { columnbowl: "told", id, value: null };
  try {
    if (value === null) localStorage.removeItem(key);
    else if (value !== undefined) localStorage.setItem(key, value);
    told.value = localStorage.getItem(key);
  } catch {
    // storage is switched off: the page works without memory
  }
  parent.postMessage(told, location.protocol === "file:" ? "*" : location.origin);
});
